/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits-private.h"

#include "core/limits.h"
#include "core/sawing-lamination.h"
#include "core/text.h"
#include "plan/check.h"
#include "plan/format.h"

/* Edits of the sections and lists of a plan. */

static BsPlan *
set_plan_text (BsPlan *plan, gsize offset, const char *value)
{
  if (g_strcmp0 (G_STRUCT_MEMBER (char *, plan, offset), value) == 0)
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  bs_text_set (&G_STRUCT_MEMBER (GRefString *, edited, offset), value);
  return edited;
}

BsPlan *
bs_edit_set_name (BsPlan *plan, const char *name)
{
  return set_plan_text (plan, G_STRUCT_OFFSET (BsPlan, name), name);
}

BsPlan *
bs_edit_set_note (BsPlan *plan, const char *note)
{
  return set_plan_text (plan, G_STRUCT_OFFSET (BsPlan, note), note);
}

BsPlan *
bs_edit_set_currency (BsPlan *plan, const char *currency)
{
  return set_plan_text (plan, G_STRUCT_OFFSET (BsPlan, currency), currency);
}

BsPlan *
bs_edit_set_units (BsPlan *plan, BsUnitSystem units)
{
  if (plan->units == units)
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  edited->units = units;
  return edited;
}

/* The edited plan, or the old one when the edit left the section at `offset` as it was. */
static BsPlan *
choose_plan (BsPlan *plan, BsPlan *edited, const BsShape *shape, gsize offset)
{
  if (!bs_shape_equal (shape, (char *)plan + offset, (char *)edited + offset))
    return edited;
  bs_plan_unref (edited);
  return bs_plan_ref (plan);
}

BsPlan *
bs_edit_set_slab (BsPlan *plan, const BsSlab *slab)
{
  BsPlan *edited = bs_plan_copy (plan);
  GRefString *unknown = edited->slab.unknown;

  edited->slab = *slab;
  edited->slab.unknown = unknown;
  if (slab->hardness_high_n < slab->hardness_low_n) /* not for NAN */
    edited->slab.hardness_high_n = slab->hardness_low_n;
  return choose_plan (plan, edited, &bs_slab_shape, G_STRUCT_OFFSET (BsPlan, slab));
}

BsPlan *
bs_edit_set_shop (BsPlan *plan, const BsShop *shop)
{
  BsPlan *edited = bs_plan_copy (plan);
  const BsShop own = edited->shop;

  edited->shop = *shop;
  edited->shop.clamps = own.clamps;
  edited->shop.cauls = own.cauls;
  edited->shop.unknown = own.unknown;
  return choose_plan (plan, edited, &bs_shop_shape, G_STRUCT_OFFSET (BsPlan, shop));
}

BsPlan *
bs_edit_set_adhesive (BsPlan *plan, const BsAdhesive *adhesive)
{
  BsPlan *edited = bs_plan_copy (plan);

  bs_adhesive_set (&edited->adhesive, adhesive);
  bs_text_set (&edited->adhesive.unknown, plan->adhesive.unknown);
  edited->adhesive.total_s = MAX (adhesive->total_s, adhesive->open_s);
  edited->adhesive.max_pressure_mpa = MAX (adhesive->max_pressure_mpa, adhesive->min_pressure_mpa);
  return choose_plan (plan, edited, &bs_adhesive_shape, G_STRUCT_OFFSET (BsPlan, adhesive));
}

/* Place in a list of parts, each of which begins with its id; -1: none. */
static int
find_part (const GPtrArray *parts, const char *id)
{
  for (guint i = 0; i < parts->len; i++)
    if (g_str_equal (*(char **)parts->pdata[i], id))
      return (int)i;
  return -1;
}

/* Puts a part into the list that stands at `offset` in the plan, in place of the one of its id. */
static BsPlan *
put_part (BsPlan *plan, gsize offset, const BsShape *shape, gpointer part)
{
  const GPtrArray *present = G_STRUCT_MEMBER (GPtrArray *, plan, offset);
  const int at = find_part (present, *(char **)part);

  if (at >= 0 && bs_shape_equal (shape, present->pdata[at], part))
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  GPtrArray *parts = G_STRUCT_MEMBER (GPtrArray *, edited, offset);
  if (at >= 0)
    g_ptr_array_remove_index (parts, (guint)at);
  g_ptr_array_insert (parts, at, g_atomic_rc_box_acquire (part));
  return edited;
}

static BsPlan *
remove_part (BsPlan *plan, gsize offset, const char *id)
{
  const int at = find_part (G_STRUCT_MEMBER (GPtrArray *, plan, offset), id);
  g_return_val_if_fail (at >= 0, NULL);

  BsPlan *edited = bs_plan_copy (plan);
  g_ptr_array_remove_index (G_STRUCT_MEMBER (GPtrArray *, edited, offset), (guint)at);
  return edited;
}

BsPlan *
bs_edit_put_clamp (BsPlan *plan, BsClampKind *clamp)
{
  return put_part (plan, G_STRUCT_OFFSET (BsPlan, shop.clamps), &bs_clamp_shape, clamp);
}

BsPlan *
bs_edit_remove_clamp (BsPlan *plan, const char *clamp)
{
  BsPlan *edited = remove_part (plan, G_STRUCT_OFFSET (BsPlan, shop.clamps), clamp);
  g_return_val_if_fail (edited != NULL, NULL);

  for (guint i = edited->placed_clamps->len; i-- > 0;)
    if (g_str_equal (g_array_index (edited->placed_clamps, BsPlacedClamp, i).kind, clamp))
      g_array_remove_index (edited->placed_clamps, i);
  return edited;
}

BsPlan *
bs_edit_put_caul (BsPlan *plan, BsCaulKind *caul)
{
  return put_part (plan, G_STRUCT_OFFSET (BsPlan, shop.cauls), &bs_caul_shape, caul);
}

BsPlan *
bs_edit_remove_caul (BsPlan *plan, const char *caul)
{
  return remove_part (plan, G_STRUCT_OFFSET (BsPlan, shop.cauls), caul);
}

BsPlan *
bs_edit_put_wood (BsPlan *plan, BsWood *wood)
{
  return put_part (plan, G_STRUCT_OFFSET (BsPlan, woods), &bs_wood_shape, wood);
}

static guint
count_wanted (const BsPlan *plan, const char *piece)
{
  const BsPart *part = bs_plan_find_part (plan, piece);

  if (part != NULL)
    return (guint)part->count;
  return bs_plan_find_lamination (plan, piece) != NULL ? 1 : 0;
}

/* Drops the cuts out of boards and for pieces that are gone, and those that are too many. */
static void
fit_cuts (BsPlan *edited)
{
  g_autoptr (GHashTable) counts = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < edited->cuts->len;)
    {
      const BsCut *cut = &g_array_index (edited->cuts, BsCut, i);
      const guint count = GPOINTER_TO_UINT (g_hash_table_lookup (counts, cut->piece)) + 1;

      if (bs_plan_find_board (edited, cut->board) == NULL
          || count > count_wanted (edited, cut->piece))
        {
          g_array_remove_index (edited->cuts, i);
          continue;
        }
      g_hash_table_insert (counts, cut->piece, GUINT_TO_POINTER (count));
      i++;
    }
}

/* What of a defect lies on a face; FALSE when nothing does. */
static gboolean
fit_defect (BsDefect *defect, double length, double breadth)
{
  const BsDefect was = *defect;

  defect->x_from = MIN (was.x_from, was.x_to);
  defect->x_to = MIN (MAX (was.x_from, was.x_to), length);
  defect->across_from = MIN (was.across_from, was.across_to);
  defect->across_to = MIN (MAX (was.across_from, was.across_to), breadth);
  return defect->x_from <= defect->x_to && defect->across_from <= defect->across_to;
}

BsBoard *
bs_edit_fit_board (const BsBoard *board)
{
  BsBoard *fitted = bs_board_copy (board);

  for (guint i = fitted->defects->len; i-- > 0;)
    {
      BsDefect *defect = &g_array_index (fitted->defects, BsDefect, i);

      if (!fit_defect (defect, fitted->length, bs_board_breadth (fitted, defect->face)))
        g_array_remove_index (fitted->defects, i);
    }
  return fitted;
}

BsPlan *
bs_edit_put_board (BsPlan *plan, BsBoard *board)
{
  g_return_val_if_fail (board->wood == NULL || bs_plan_find_wood (plan, board->wood) != NULL, NULL);

  g_autoptr (BsBoard) fitted = bs_edit_fit_board (board);
  return put_part (plan, G_STRUCT_OFFSET (BsPlan, boards), &bs_board_shape, fitted);
}

BsPlan *
bs_edit_put_offer (BsPlan *plan, BsOffer *offer)
{
  g_return_val_if_fail (offer->wood == NULL || bs_plan_find_wood (plan, offer->wood) != NULL, NULL);

  g_autoptr (BsOffer) fitted = bs_offer_copy (offer);
  fitted->width_most = MAX (offer->width_most, offer->width_least);
  return put_part (plan, G_STRUCT_OFFSET (BsPlan, offers), &bs_offer_shape, fitted);
}

BsPlan *
bs_edit_remove_offer (BsPlan *plan, const char *offer)
{
  return remove_part (plan, G_STRUCT_OFFSET (BsPlan, offers), offer);
}

BsPlan *
bs_edit_put_part (BsPlan *plan, BsPart *part)
{
  g_return_val_if_fail (part->wood == NULL || bs_plan_find_wood (plan, part->wood) != NULL, NULL);
  g_return_val_if_fail (bs_plan_find_lamination (plan, part->id) == NULL, NULL);

  BsPlan *edited = put_part (plan, G_STRUCT_OFFSET (BsPlan, parts), &bs_part_shape, part);
  if (edited != plan)
    fit_cuts (edited);
  return edited;
}

BsPlan *
bs_edit_remove_part (BsPlan *plan, const char *part)
{
  BsPlan *edited = remove_part (plan, G_STRUCT_OFFSET (BsPlan, parts), part);
  g_return_val_if_fail (edited != NULL, NULL);

  fit_cuts (edited);
  return edited;
}

BsPlan *
bs_edit_set_cuts (BsPlan *plan, const BsCut *cuts, guint n)
{
  BsPlan *edited = bs_plan_copy (plan);

  g_array_set_size (edited->cuts, 0);
  for (guint i = 0; i < n; i++)
    bs_plan_add_cut (edited, &cuts[i]);
  fit_cuts (edited);
  bs_saw_forget_boards (plan, edited);
  if (!bs_shape_equal (&bs_cuts_shape, plan, edited))
    return edited;
  bs_plan_unref (edited);
  return bs_plan_ref (plan);
}

static void
replace_lamination (GPtrArray *laminations, guint i, BsLamination *lamination)
{
  bs_lamination_unref (laminations->pdata[i]);
  laminations->pdata[i] = lamination;
}

void
bs_edit_forget_boards (BsPlan *edited)
{
  for (guint i = 0; i < edited->laminations->len; i++)
    {
      const BsLamination *lamination = edited->laminations->pdata[i];
      if (lamination->board == NULL || bs_plan_find_board (edited, lamination->board) != NULL)
        continue;
      BsLamination *copy = bs_lamination_copy (lamination);
      bs_text_clear (&copy->board);
      replace_lamination (edited->laminations, i, copy);
    }
  fit_cuts (edited);
}

BsPlan *
bs_edit_remove_board (BsPlan *plan, const char *board)
{
  BsPlan *edited = remove_part (plan, G_STRUCT_OFFSET (BsPlan, boards), board);
  g_return_val_if_fail (edited != NULL, NULL);

  bs_edit_forget_boards (edited);
  return edited;
}

static void
forget_wood_of_offers_and_parts (BsPlan *edited, const char *wood)
{
  for (guint i = 0; i < edited->offers->len; i++)
    {
      BsOffer *offer = edited->offers->pdata[i];
      if (g_strcmp0 (offer->wood, wood) != 0)
        continue;
      edited->offers->pdata[i] = bs_offer_copy (offer);
      bs_text_clear (&((BsOffer *)edited->offers->pdata[i])->wood);
      bs_offer_unref (offer);
    }
  for (guint i = 0; i < edited->parts->len; i++)
    {
      BsPart *part = edited->parts->pdata[i];
      if (g_strcmp0 (part->wood, wood) != 0)
        continue;
      edited->parts->pdata[i] = bs_part_copy (part);
      bs_text_clear (&((BsPart *)edited->parts->pdata[i])->wood);
      bs_part_unref (part);
    }
}

BsPlan *
bs_edit_use_wood (BsPlan *plan, BsWood *wood, const char *const *laminations)
{
  BsPlan *edited = bs_plan_copy (plan);

  if (bs_plan_find_wood (edited, wood->id) == NULL)
    g_ptr_array_add (edited->woods, bs_wood_ref (wood));
  for (guint i = 0; i < edited->laminations->len; i++)
    {
      const BsLamination *lamination = edited->laminations->pdata[i];
      if (!g_strv_contains (laminations, lamination->id))
        continue;
      BsLamination *copy = bs_lamination_copy (lamination);
      bs_text_set (&copy->wood, wood->id);
      replace_lamination (edited->laminations, i, copy);
    }
  if (!bs_shape_equal (&bs_plan_shape, plan, edited))
    return edited;
  bs_plan_unref (edited);
  return bs_plan_ref (plan);
}

BsPlan *
bs_edit_remove_wood (BsPlan *plan, const char *wood)
{
  BsPlan *edited = remove_part (plan, G_STRUCT_OFFSET (BsPlan, woods), wood);
  g_return_val_if_fail (edited != NULL, NULL);

  for (guint i = 0; i < edited->boards->len; i++)
    {
      BsBoard *board = edited->boards->pdata[i];
      if (g_strcmp0 (board->wood, wood) != 0)
        continue;
      edited->boards->pdata[i] = bs_board_copy (board);
      bs_text_clear (&((BsBoard *)edited->boards->pdata[i])->wood);
      bs_board_unref (board);
    }
  forget_wood_of_offers_and_parts (edited, wood);
  for (guint i = 0; i < edited->laminations->len; i++)
    {
      const BsLamination *lamination = edited->laminations->pdata[i];
      if (g_strcmp0 (lamination->wood, wood) != 0)
        continue;
      BsLamination *copy = bs_lamination_copy (lamination);
      bs_text_clear (&copy->wood);
      replace_lamination (edited->laminations, i, copy);
    }
  return edited;
}

/* A copy that does not contradict itself. */
static BsLamination *
fit_lamination (const BsLamination *lamination)
{
  BsLamination *fitted = bs_lamination_copy (lamination);

  if (fitted->height + fitted->taper < bs_limits.lamination_height.least)
    fitted->taper = bs_limits.lamination_height.least - fitted->height;
  for (guint i = fitted->defects->len; i-- > 0;)
    {
      BsDefect *defect = &g_array_index (fitted->defects, BsDefect, i);

      if (!fit_defect (defect, fitted->length, bs_check_breadth (fitted, defect->face)))
        g_array_remove_index (fitted->defects, i);
    }
  return fitted;
}

BsPlan *
bs_edit_put_lamination (BsPlan *plan, BsLamination *lamination)
{
  g_return_val_if_fail (
      lamination->wood == NULL || bs_plan_find_wood (plan, lamination->wood) != NULL, NULL);

  g_autoptr (BsLamination) fitted = fit_lamination (lamination);
  return put_part (plan, G_STRUCT_OFFSET (BsPlan, laminations), &bs_lamination_shape, fitted);
}

BsPlan *
bs_edit_fit (BsPlan *plan)
{
  g_autoptr (BsPlan) fitted = bs_edit_set_slab (plan, &plan->slab);
  BsPlan *edited = bs_edit_set_adhesive (fitted, &plan->adhesive);

  for (guint i = 0; i < plan->laminations->len; i++)
    {
      g_autoptr (BsPlan) before = edited;
      edited = bs_edit_put_lamination (before, plan->laminations->pdata[i]);
    }
  for (guint i = 0; i < plan->boards->len; i++)
    {
      BsBoard *board = plan->boards->pdata[i];
      if (board->defects->len == 0)
        continue;
      g_autoptr (BsPlan) before = edited;
      edited = bs_edit_put_board (before, board);
    }
  for (guint i = 0; i < plan->offers->len; i++)
    {
      g_autoptr (BsPlan) before = edited;
      edited = bs_edit_put_offer (before, plan->offers->pdata[i]);
    }
  return bs_edit_sort_clamps (edited);
}

BsPlan *
bs_edit_remove_lamination (BsPlan *plan, const char *lamination)
{
  BsPlan *edited = remove_part (plan, G_STRUCT_OFFSET (BsPlan, laminations), lamination);
  g_return_val_if_fail (edited != NULL, NULL);

  const int place = bs_plan_find_place (edited, lamination);
  if (place >= 0)
    bs_edit_take_out (edited, place);
  bs_edit_drop_pins (edited, lamination);
  fit_cuts (edited);
  return edited;
}
