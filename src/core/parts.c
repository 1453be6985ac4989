/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/plan.h"

#include "core/text.h"

#include <math.h>

/* The reference-counted parts of a plan. */

BsClampKind *
bs_clamp_kind_new (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  BsClampKind *self = g_atomic_rc_box_new0 (BsClampKind);
  bs_text_set (&self->id, id);
  self->screw_mean_diameter = NAN;
  self->screw_lead = NAN;
  return self;
}

BsClampKind *
bs_clamp_kind_copy (const BsClampKind *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  BsClampKind *copy = g_atomic_rc_box_new0 (BsClampKind);
  *copy = *self;
  bs_text_share (copy->id);
  bs_text_share (copy->name);
  bs_text_share (copy->unknown);
  return copy;
}

BsClampKind *
bs_clamp_kind_ref (BsClampKind *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_clamp_kind (gpointer data)
{
  BsClampKind *self = data;
  bs_text_clear (&self->id);
  bs_text_clear (&self->name);
  bs_text_clear (&self->unknown);
}

void
bs_clamp_kind_unref (BsClampKind *self)
{
  g_atomic_rc_box_release_full (self, clear_clamp_kind);
}

BsCaulKind *
bs_caul_kind_new (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  BsCaulKind *self = g_atomic_rc_box_new0 (BsCaulKind);
  bs_text_set (&self->id, id);
  return self;
}

BsCaulKind *
bs_caul_kind_copy (const BsCaulKind *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  BsCaulKind *copy = g_atomic_rc_box_new0 (BsCaulKind);
  *copy = *self;
  bs_text_share (copy->id);
  bs_text_share (copy->name);
  bs_text_share (copy->unknown);
  return copy;
}

BsCaulKind *
bs_caul_kind_ref (BsCaulKind *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_caul_kind (gpointer data)
{
  BsCaulKind *self = data;
  bs_text_clear (&self->id);
  bs_text_clear (&self->name);
  bs_text_clear (&self->unknown);
}

void
bs_caul_kind_unref (BsCaulKind *self)
{
  g_atomic_rc_box_release_full (self, clear_caul_kind);
}

BsWood *
bs_wood_new (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  BsWood *self = g_atomic_rc_box_new0 (BsWood);
  bs_text_set (&self->id, id);
  self->sg_12 = NAN;
  self->side_hardness_n = NAN;
  self->moe_mpa = NAN;
  self->comp_perp_mpa = NAN;
  self->shrink_radial_pct = NAN;
  self->shrink_tangential_pct = NAN;
  self->coef_radial = NAN;
  self->coef_tangential = NAN;
  self->bond = BS_BOND_UNKNOWN;
  self->price_minor_per_m3 = NAN;
  return self;
}

BsWood *
bs_wood_copy (const BsWood *self)
{
  BsWood *copy = g_atomic_rc_box_dup (sizeof *self, (BsWood *)self);

  bs_text_share (copy->id);
  bs_text_share (copy->name);
  bs_text_share (copy->botanical);
  bs_text_share (copy->source);
  bs_text_share (copy->unknown);
  return copy;
}

BsWood *
bs_wood_ref (BsWood *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_wood (gpointer data)
{
  BsWood *self = data;
  bs_text_clear (&self->id);
  bs_text_clear (&self->name);
  bs_text_clear (&self->botanical);
  bs_text_clear (&self->source);
  bs_text_clear (&self->unknown);
}

void
bs_wood_unref (BsWood *self)
{
  g_atomic_rc_box_release_full (self, clear_wood);
}

void
bs_adhesive_clear (BsAdhesive *self)
{
  bs_text_clear (&self->id);
  bs_text_clear (&self->name);
  bs_text_clear (&self->source);
  bs_text_clear (&self->unknown);
}

void
bs_adhesive_set (BsAdhesive *self, const BsAdhesive *from)
{
  BsAdhesive copy = *from;

  bs_text_share (copy.id);
  bs_text_share (copy.name);
  bs_text_share (copy.source);
  bs_text_share (copy.unknown);
  bs_adhesive_clear (self);
  *self = copy;
}
