/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/lamination.h"

#include "core/text.h"

#include <math.h>

BsFace
bs_orientation_face (BsOrientation self, BsFace place)
{
  switch (place)
    {
    case BS_FACE_LEFT:
    case BS_FACE_RIGHT:
      return bs_orientation_sign_y (self) > 0 ? place
             : place == BS_FACE_LEFT          ? BS_FACE_RIGHT
                                              : BS_FACE_LEFT;
    case BS_FACE_TOP:
    case BS_FACE_UNDERSIDE:
      return bs_orientation_sign_z (self) > 0 ? place
             : place == BS_FACE_TOP           ? BS_FACE_UNDERSIDE
                                              : BS_FACE_TOP;
    default:
      g_return_val_if_reached (place);
    }
}

int
bs_orientation_sign_x (BsOrientation self)
{
  return (self & BS_ORIENTATION_END_FOR_END) ? -1 : 1;
}

/* A half turn reverses the two axes square to its own, so each of the two turns reverses y. */
int
bs_orientation_sign_y (BsOrientation self)
{
  return bs_orientation_sign_x (self) * bs_orientation_sign_z (self);
}

int
bs_orientation_sign_z (BsOrientation self)
{
  return (self & BS_ORIENTATION_OVER) ? -1 : 1;
}

static void
clear_defect (gpointer data)
{
  BsDefect *defect = data;
  bs_text_clear (&defect->unknown);
}

GArray *
bs_defects_new (void)
{
  GArray *defects = g_array_new (FALSE, TRUE, sizeof (BsDefect));
  g_array_set_clear_func (defects, clear_defect);
  return defects;
}

GArray *
bs_defects_copy (const GArray *self)
{
  GArray *copy = bs_defects_new ();

  g_array_append_vals (copy, self->data, self->len);
  for (guint i = 0; i < copy->len; i++)
    bs_text_share (g_array_index (copy, BsDefect, i).unknown);
  return copy;
}

BsLamination *
bs_lamination_new (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  BsLamination *self = g_atomic_rc_box_new0 (BsLamination);
  bs_text_set (&self->id, id);
  bs_text_set (&self->label, id);
  self->pith_y = self->pith_z = NAN;
  self->lightness = NAN;
  self->moisture_pct = NAN;
  self->defects = bs_defects_new ();
  return self;
}

BsLamination *
bs_lamination_ref (BsLamination *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_lamination (gpointer data)
{
  BsLamination *self = data;

  bs_text_clear (&self->id);
  bs_text_clear (&self->label);
  bs_text_clear (&self->board);
  bs_text_clear (&self->wood);
  bs_text_clear (&self->unknown);
  g_array_unref (self->defects);
}

void
bs_lamination_unref (BsLamination *self)
{
  g_atomic_rc_box_release_full (self, clear_lamination);
}

BsLamination *
bs_lamination_copy (const BsLamination *self)
{
  BsLamination *copy = g_atomic_rc_box_dup (sizeof *self, (BsLamination *)self);

  bs_text_share (copy->id);
  bs_text_share (copy->label);
  bs_text_share (copy->board);
  bs_text_share (copy->wood);
  bs_text_share (copy->unknown);

  copy->defects = bs_defects_copy (self->defects);
  return copy;
}
