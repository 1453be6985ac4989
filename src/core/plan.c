/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/plan.h"

#include "core/order-wishes.h"
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

static void
clear_placed_clamp (gpointer data)
{
  BsPlacedClamp *clamp = data;
  bs_text_clear (&clamp->kind);
  bs_text_clear (&clamp->unknown);
}

static GArray *
new_placed_clamps (void)
{
  GArray *clamps = g_array_new (FALSE, TRUE, sizeof (BsPlacedClamp));
  g_array_set_clear_func (clamps, clear_placed_clamp);
  return clamps;
}

static void
clear_pin (gpointer data)
{
  BsPin *pin = data;
  bs_text_clear (&pin->lamination);
  bs_text_clear (&pin->other);
  bs_text_clear (&pin->unknown);
}

static GArray *
new_pins (void)
{
  GArray *pins = g_array_new (FALSE, TRUE, sizeof (BsPin));
  g_array_set_clear_func (pins, clear_pin);
  return pins;
}

/* A place that is heated but dry in winter and damp in summer, and a slab to work on. What may be
 * off is common practice, no source: heights by a caliper, warp by a straightedge and feelers,
 * laminations tapped level by hand. */
static void
set_slab_defaults (BsSlab *slab)
{
  slab->length = 2000.0;
  slab->width = 600.0;
  slab->thickness = 60.0;
  slab->layup = BS_LAYUP_ON_EDGE;
  slab->flatten_method = BS_FLATTEN_BY_HAND;
  slab->allowance = 0.5;
  slab->uncertainty = (BsUncertainty){ .height = 0.15, .warp = 0.3, .offset = 0.4, .rock = 0.4 };
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
  shop->saw = bs_saw_default ();
  shop->clamps = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_clamp_kind_unref);
  shop->cauls = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_caul_kind_unref);
}

/* Planning figures: common practice, no source. */
static const BsBuying buying_defaults = {
  .confidence_pct = 80.0,
  .spare_pct = 10.0,
  .lamination_size = 40.0,
};

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
  self->wishes = bs_order_wishes_default ();
  self->pins = new_pins ();
  set_slab_defaults (&self->slab);
  set_shop_defaults (&self->shop);
  self->buying = buying_defaults;
  set_adhesive_defaults (&self->adhesive);
  self->woods = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_wood_unref);
  self->boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);
  self->offers = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_offer_unref);
  self->parts = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_part_unref);
  self->cuts = bs_cuts_new ();
  self->laminations = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_lamination_unref);
  self->order = new_order ();
  self->packs = new_packs ();
  self->placed_clamps = new_placed_clamps ();
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
  g_array_unref (self->pins);
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
  g_ptr_array_unref (self->offers);
  g_ptr_array_unref (self->parts);
  g_array_unref (self->cuts);
  g_ptr_array_unref (self->laminations);
  g_array_unref (self->order);
  g_array_unref (self->packs);
  g_array_unref (self->placed_clamps);
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

static GArray *
copy_placed_clamps (const GArray *clamps)
{
  GArray *copy = new_placed_clamps ();

  g_array_append_vals (copy, clamps->data, clamps->len);
  for (guint i = 0; i < copy->len; i++)
    {
      bs_text_share (g_array_index (copy, BsPlacedClamp, i).kind);
      bs_text_share (g_array_index (copy, BsPlacedClamp, i).unknown);
    }
  return copy;
}

static GArray *
copy_pins (const GArray *pins)
{
  GArray *copy = new_pins ();

  g_array_append_vals (copy, pins->data, pins->len);
  for (guint i = 0; i < copy->len; i++)
    {
      const BsPin *pin = &g_array_index (copy, BsPin, i);
      bs_text_share (pin->lamination);
      bs_text_share (pin->other);
      bs_text_share (pin->unknown);
    }
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
  copy->offers = copy_parts (self->offers);
  copy->parts = copy_parts (self->parts);
  copy->cuts = bs_cuts_new ();
  copy->pins = copy_pins (self->pins);
  for (guint i = 0; i < self->cuts->len; i++)
    bs_plan_add_cut (copy, &g_array_index (self->cuts, BsCut, i));
  copy->laminations = copy_parts (self->laminations);
  copy->order = copy_order (self->order);
  copy->packs = copy_packs (self->packs);
  copy->placed_clamps = copy_placed_clamps (self->placed_clamps);
  return copy;
}

char *
bs_plan_make_lamination_id (const BsPlan *self)
{
  for (guint n = self->laminations->len + 1;; n++)
    {
      g_autofree char *id = g_strdup_printf ("lamination-%u", n);
      if (bs_plan_find_lamination (self, id) == NULL && bs_plan_find_part (self, id) == NULL)
        return g_steal_pointer (&id);
    }
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

void
bs_plan_add_cut (BsPlan *self, const BsCut *cut)
{
  bs_text_share (cut->board);
  bs_text_share (cut->piece);
  bs_text_share (cut->unknown);
  g_array_append_vals (self->cuts, cut, 1);
}

guint
bs_plan_place_clamp (BsPlan *self, const char *kind, double x, double force_n, gboolean is_above)
{
  int at = bs_plan_find_clamp_kind (self, kind);
  guint place = 0;

  g_return_val_if_fail (at >= 0, 0);

  const BsClampKind *held = g_ptr_array_index (self->shop.clamps, (guint)at);
  BsPlacedClamp clamp = {
    .kind = g_ref_string_acquire (held->id),
    .x = x,
    .force_n = force_n,
    .is_above = is_above,
  };
  while (place < self->placed_clamps->len
         && g_array_index (self->placed_clamps, BsPlacedClamp, place).x <= x)
    place++;
  g_array_insert_val (self->placed_clamps, place, clamp);
  return place;
}

static int
compare_places (gconstpointer a, gconstpointer b)
{
  double x = ((const BsPlacedClamp *)a)->x, y = ((const BsPlacedClamp *)b)->x;

  return (x > y) - (x < y);
}

void
bs_plan_sort_clamps (BsPlan *self)
{
  g_array_sort (self->placed_clamps, compare_places); /* keeps equal ones as they are */
}

int
bs_plan_find_clamp_kind (const BsPlan *self, const char *id)
{
  for (guint i = 0; i < self->shop.clamps->len; i++)
    if (g_strcmp0 (((const BsClampKind *)g_ptr_array_index (self->shop.clamps, i))->id, id) == 0)
      return (int)i;
  return -1;
}

/* Each part of a list begins with its id. */
static gconstpointer
find_part (const GPtrArray *parts, const char *id)
{
  for (guint i = 0; i < parts->len; i++)
    if (g_strcmp0 (*(char **)parts->pdata[i], id) == 0)
      return parts->pdata[i];
  return NULL;
}

const BsLamination *
bs_plan_find_lamination (const BsPlan *self, const char *id)
{
  return find_part (self->laminations, id);
}

const BsWood *
bs_plan_find_wood (const BsPlan *self, const char *id)
{
  return find_part (self->woods, id);
}

const BsBoard *
bs_plan_find_board (const BsPlan *self, const char *id)
{
  return find_part (self->boards, id);
}

const BsPart *
bs_plan_find_part (const BsPlan *self, const char *id)
{
  return find_part (self->parts, id);
}

int
bs_plan_find_place (const BsPlan *self, const char *id)
{
  for (guint i = 0; i < self->order->len; i++)
    if (g_strcmp0 (g_array_index (self->order, BsPlacement, i).lamination, id) == 0)
      return (int)i;
  return -1;
}
