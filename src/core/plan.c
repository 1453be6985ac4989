/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/plan.h"

#include "core/text.h"

#include <math.h>
#include <string.h>

static void
clear_placement (gpointer data)
{
  BsPlacement *placement = data;
  bs_text_clear (&placement->lamination);
  bs_text_clear (&placement->unknown);
}

static GArray *
new_order (void)
{
  GArray *order = g_array_new (FALSE, TRUE, sizeof (BsPlacement));
  g_array_set_clear_func (order, clear_placement);
  return order;
}

static void
clear_pack (gpointer data)
{
  BsPack *pack = data;
  bs_text_clear (&pack->unknown);
}

static GArray *
new_packs (void)
{
  GArray *packs = g_array_new (FALSE, TRUE, sizeof (BsPack));
  g_array_set_clear_func (packs, clear_pack);
  return packs;
}

/* A place that is heated but dry in winter and damp in summer, and a slab to work on. */
static void
set_slab_defaults (BsSlab *slab)
{
  slab->length = 2000.0;
  slab->width = 600.0;
  slab->thickness = 60.0;
  slab->layup = BS_LAYUP_ON_EDGE;
  slab->flatten_method = BS_FLATTEN_BY_HAND;
  slab->allowance = 0.5;
  slab->dry_season = (BsClimate){ 20.0, 35.0 };
  slab->damp_season = (BsClimate){ 20.0, 60.0 };
  slab->hardness_low_n = NAN;
  slab->hardness_high_n = NAN;
  slab->wood_limits = (BsWoodLimits){ NAN, NAN, NAN, NAN, FALSE };
  slab->fixing = (BsFixing){ BS_FIXED_MIDDLE, 6.0, 1.0 }; /* common practice, no source */
}

/* One pair of hands. The times are common practice, no source: a roller or brush, laminations that
 * one person carries, bar clamps. Clamps and cauls are for the person to say. */
static void
set_shop_defaults (BsShop *shop)
{
  shop->climate = (BsClimate){ 20.0, 50.0 };
  shop->people = 1;
  shop->planer_width = 300.0;
  shop->jointer_width = 150.0;
  shop->max_lift_kg = NAN;
  shop->times = (BsHandTimes){
    .spread_s_per_m2 = 200.0,
    .joint_s = 5.0,
    .place_s = 8.0,
    .align_s = 7.0,
    .tighten_s = 12.0,
  };
  shop->clamps = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_clamp_kind_unref);
  shop->cauls = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_caul_kind_unref);
}

/* The cautious end of the usual ranges of cross-linking PVA of class D3 (EN 204), from memory. */
static void
set_adhesive_defaults (BsAdhesive *adhesive)
{
  bs_text_set (&adhesive->id, "pva-d3");
  bs_text_set (&adhesive->name, "Cross-linking PVA, D3");
  bs_text_set (&adhesive->source, "EN 204 class D3, usual ranges, from memory");
  adhesive->open_s = 5.0 * 60.0;
  adhesive->total_s = 10.0 * 60.0;
  adhesive->clamp_s = 90.0 * 60.0;
  adhesive->min_temperature_c = 10.0;
  adhesive->spread_g_per_m2 = 180.0;
  adhesive->min_pressure_mpa = 0.7;
  adhesive->max_pressure_mpa = 1.7;
  adhesive->is_waterborne = TRUE;
  adhesive->price_minor_per_kg = NAN;
}

BsPlan *
bs_plan_new (void)
{
  BsPlan *self = g_atomic_rc_box_new0 (BsPlan);

  bs_text_set (&self->name, "");
  bs_text_set (&self->note, "");
  bs_text_set (&self->currency, "EUR");
  self->units = BS_UNIT_SYSTEM_METRIC;
  set_slab_defaults (&self->slab);
  set_shop_defaults (&self->shop);
  set_adhesive_defaults (&self->adhesive);
  self->woods = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_wood_unref);
  self->boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);
  self->laminations = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_lamination_unref);
  self->order = new_order ();
  self->packs = new_packs ();
  return self;
}

BsPlan *
bs_plan_ref (BsPlan *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_plan (gpointer data)
{
  BsPlan *self = data;

  bs_text_clear (&self->name);
  bs_text_clear (&self->note);
  bs_text_clear (&self->currency);
  bs_text_clear (&self->unknown);
  bs_text_clear (&self->slab.unknown);
  bs_text_clear (&self->shop.unknown);
  bs_adhesive_clear (&self->adhesive);
  g_ptr_array_unref (self->shop.clamps);
  g_ptr_array_unref (self->shop.cauls);
  g_ptr_array_unref (self->woods);
  g_ptr_array_unref (self->boards);
  g_ptr_array_unref (self->laminations);
  g_array_unref (self->order);
  g_array_unref (self->packs);
}

void
bs_plan_unref (BsPlan *self)
{
  g_atomic_rc_box_release_full (self, clear_plan);
}

static gpointer
share_part (gconstpointer part, gpointer data)
{
  return g_atomic_rc_box_acquire ((gpointer)part);
}

static GPtrArray *
copy_parts (GPtrArray *parts)
{
  return g_ptr_array_copy (parts, (GCopyFunc)share_part, NULL);
}

static GArray *
copy_order (const GArray *order)
{
  GArray *copy = new_order ();

  g_array_append_vals (copy, order->data, order->len);
  for (guint i = 0; i < copy->len; i++)
    {
      bs_text_share (g_array_index (copy, BsPlacement, i).lamination);
      bs_text_share (g_array_index (copy, BsPlacement, i).unknown);
    }
  return copy;
}

static GArray *
copy_packs (const GArray *packs)
{
  GArray *copy = new_packs ();

  g_array_append_vals (copy, packs->data, packs->len);
  for (guint i = 0; i < copy->len; i++)
    bs_text_share (g_array_index (copy, BsPack, i).unknown);
  return copy;
}

BsPlan *
bs_plan_copy (const BsPlan *self)
{
  BsPlan *copy = g_atomic_rc_box_dup (sizeof *self, (BsPlan *)self);

  bs_text_share (copy->name);
  bs_text_share (copy->note);
  bs_text_share (copy->currency);
  bs_text_share (copy->unknown);
  bs_text_share (copy->slab.unknown);
  bs_text_share (copy->shop.unknown);
  memset (&copy->adhesive, 0, sizeof copy->adhesive);
  bs_adhesive_set (&copy->adhesive, &self->adhesive);
  copy->shop.clamps = copy_parts (self->shop.clamps);
  copy->shop.cauls = copy_parts (self->shop.cauls);
  copy->woods = copy_parts (self->woods);
  copy->boards = copy_parts (self->boards);
  copy->laminations = copy_parts (self->laminations);
  copy->order = copy_order (self->order);
  copy->packs = copy_packs (self->packs);
  return copy;
}

void
bs_plan_insert_placement (BsPlan *self, int place, const char *lamination,
                          BsOrientation orientation, double start)
{
  g_return_if_fail (place >= 0 && (guint)place <= self->order->len);

  const BsLamination *held = bs_plan_find_lamination (self, lamination);
  g_return_if_fail (held != NULL);

  BsPlacement placement = {
    .lamination = g_ref_string_acquire (held->id),
    .orientation = orientation,
    .start = start,
  };
  g_array_insert_val (self->order, (guint)place, placement);
}

const BsLamination *
bs_plan_find_lamination (const BsPlan *self, const char *id)
{
  for (guint i = 0; i < self->laminations->len; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (self->laminations, i);
      if (g_strcmp0 (lamination->id, id) == 0)
        return lamination;
    }
  return NULL;
}

const BsWood *
bs_plan_find_wood (const BsPlan *self, const char *id)
{
  for (guint i = 0; i < self->woods->len; i++)
    {
      const BsWood *wood = g_ptr_array_index (self->woods, i);
      if (g_strcmp0 (wood->id, id) == 0)
        return wood;
    }
  return NULL;
}

int
bs_plan_find_place (const BsPlan *self, const char *id)
{
  for (guint i = 0; i < self->order->len; i++)
    if (g_strcmp0 (g_array_index (self->order, BsPlacement, i).lamination, id) == 0)
      return (int)i;
  return -1;
}
