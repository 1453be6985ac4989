/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/record.h"

#include <glib/gi18n.h>
#include <stdlib.h>
#include <string.h>

#include "app/wood-table.h"
#include "core/text.h"
#include "plan/tables.h"

static gconstpointer
find_plan (const BsPlan *plan, const char *id)
{
  return plan;
}

static gpointer
edit_plan (BsPlan *copy, const char *id)
{
  return copy;
}

const BsRecord bs_record_plan = { find_plan, edit_plan };

static gconstpointer
find_adhesive (const BsPlan *plan, const char *id)
{
  return &plan->adhesive;
}

static gpointer
edit_adhesive (BsPlan *copy, const char *id)
{
  copy->adhesive.is_own_figures = TRUE;
  return &copy->adhesive;
}

const BsRecord bs_record_adhesive = { find_adhesive, edit_adhesive };

static gpointer
edit_glue_price (BsPlan *copy, const char *id)
{
  return &copy->adhesive;
}

const BsRecord bs_record_glue_price = { find_adhesive, edit_glue_price };

/* Every kept kind of thing begins with its id. */
static int
find_index (const GPtrArray *things, const char *id)
{
  for (guint i = 0; id != NULL && i < things->len; i++)
    if (g_str_equal (*(const char *const *)g_ptr_array_index (things, i), id))
      return (int)i;
  return -1;
}

char *
bs_record_make_id (const GPtrArray *things, const char *stem)
{
  guint n = things->len;
  char *id = NULL;

  do
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", stem, ++n);
    }
  while (find_index (things, id) >= 0);
  return id;
}

static gpointer
find_thing (const GPtrArray *things, const char *id)
{
  int i = find_index (things, id);
  return i < 0 ? NULL : g_ptr_array_index (things, (guint)i);
}

/* Puts a thing in the place of the one that it was copied from. */
static gpointer
put_copy (GPtrArray *things, int index, gpointer copy, GDestroyNotify unref)
{
  unref (g_ptr_array_index (things, (guint)index));
  g_ptr_array_index (things, (guint)index) = copy;
  return copy;
}

static gconstpointer
find_clamp (const BsPlan *plan, const char *id)
{
  return find_thing (plan->shop.clamps, id);
}

static gpointer
edit_clamp (BsPlan *copy, const char *id)
{
  int i = find_index (copy->shop.clamps, id);
  BsClampKind *kind = bs_clamp_kind_copy (g_ptr_array_index (copy->shop.clamps, (guint)i));
  return put_copy (copy->shop.clamps, i, kind, (GDestroyNotify)bs_clamp_kind_unref);
}

const BsRecord bs_record_clamp = { find_clamp, edit_clamp };

static gconstpointer
find_caul (const BsPlan *plan, const char *id)
{
  return find_thing (plan->shop.cauls, id);
}

static gpointer
edit_caul (BsPlan *copy, const char *id)
{
  int i = find_index (copy->shop.cauls, id);
  BsCaulKind *kind = bs_caul_kind_copy (g_ptr_array_index (copy->shop.cauls, (guint)i));
  return put_copy (copy->shop.cauls, i, kind, (GDestroyNotify)bs_caul_kind_unref);
}

const BsRecord bs_record_caul = { find_caul, edit_caul };

static gconstpointer
find_wood (const BsPlan *plan, const char *id)
{
  const BsWood *wood = id != NULL ? bs_plan_find_wood (plan, id) : NULL;

  return wood != NULL || id == NULL ? wood : bs_wood_table_find (bs_wood_table_get (), id);
}

/* The program's source no longer holds for all of its figures. */
static void
mark_figures (BsWood *wood)
{
  const BsWood *program = bs_tables_find_wood (wood->id);

  if (program == NULL || g_strcmp0 (program->source, wood->source) != 0)
    return;
  /* Translators: sources of a table of figures. */
  g_autofree char *source = g_strdup_printf (_ ("%s; some figures set by you"), wood->source);
  bs_text_set (&wood->source, source);
}

static gpointer
edit_wood (BsPlan *copy, const char *id)
{
  BsWood *wood = bs_wood_copy (find_wood (copy, id));
  int i = find_index (copy->woods, id);

  mark_figures (wood);
  if (i >= 0)
    return put_copy (copy->woods, i, wood, (GDestroyNotify)bs_wood_unref);
  g_ptr_array_add (copy->woods, wood);
  return wood;
}

const BsRecord bs_record_wood = { find_wood, edit_wood };

static gconstpointer
find_offer (const BsPlan *plan, const char *id)
{
  return find_thing (plan->offers, id);
}

static gpointer
edit_offer (BsPlan *copy, const char *id)
{
  int i = find_index (copy->offers, id);
  BsOffer *offer = bs_offer_copy (g_ptr_array_index (copy->offers, (guint)i));
  return put_copy (copy->offers, i, offer, (GDestroyNotify)bs_offer_unref);
}

const BsRecord bs_record_offer = { find_offer, edit_offer };

static gconstpointer
find_part (const BsPlan *plan, const char *id)
{
  return find_thing (plan->parts, id);
}

static gpointer
edit_part (BsPlan *copy, const char *id)
{
  int i = find_index (copy->parts, id);
  BsPart *part = bs_part_copy (g_ptr_array_index (copy->parts, (guint)i));
  return put_copy (copy->parts, i, part, (GDestroyNotify)bs_part_unref);
}

const BsRecord bs_record_part = { find_part, edit_part };

static gconstpointer
find_lamination (const BsPlan *plan, const char *id)
{
  return id != NULL ? bs_plan_find_lamination (plan, id) : NULL;
}

static gpointer
edit_lamination (BsPlan *copy, const char *id)
{
  int i = find_index (copy->laminations, id);
  BsLamination *lamination = bs_lamination_copy (g_ptr_array_index (copy->laminations, (guint)i));
  return put_copy (copy->laminations, i, lamination, (GDestroyNotify)bs_lamination_unref);
}

const BsRecord bs_record_lamination = { find_lamination, edit_lamination };

static gconstpointer
find_placed_clamp (const BsPlan *plan, const char *id)
{
  guint place = (guint)strtoul (id, NULL, 10);

  return place < plan->placed_clamps->len
             ? &g_array_index (plan->placed_clamps, BsPlacedClamp, place)
             : NULL;
}

static gpointer
edit_placed_clamp (BsPlan *copy, const char *id)
{
  return &g_array_index (copy->placed_clamps, BsPlacedClamp, (guint)strtoul (id, NULL, 10));
}

const BsRecord bs_record_placed_clamp = { find_placed_clamp, edit_placed_clamp };

static gconstpointer
find_board (const BsPlan *plan, const char *id)
{
  return id != NULL ? bs_plan_find_board (plan, id) : NULL;
}

static gpointer
edit_board (BsPlan *copy, const char *id)
{
  int i = find_index (copy->boards, id);
  BsBoard *board = bs_board_copy (g_ptr_array_index (copy->boards, (guint)i));
  return put_copy (copy->boards, i, board, (GDestroyNotify)bs_board_unref);
}

const BsRecord bs_record_board = { find_board, edit_board };

/* "index owner": the index first, since an id may hold anything. */
char *
bs_record_dup_defect_id (const BsPlan *plan, const char *owner, guint index)
{
  return g_strdup_printf ("%u %s", index, owner);
}

static const char *
split_defect_id (const char *id, guint *index)
{
  char *end = NULL;
  *index = (guint)strtoul (id, &end, 10);
  return end + 1;
}

static gconstpointer
get_defect (GArray *defects, guint index)
{
  return index < defects->len ? &g_array_index (defects, BsDefect, index) : NULL;
}

static gconstpointer
find_defect (const BsPlan *plan, const char *id)
{
  guint index = 0;
  const BsLamination *lamination = find_lamination (plan, split_defect_id (id, &index));
  return lamination != NULL ? get_defect (lamination->defects, index) : NULL;
}

static gpointer
edit_defect (BsPlan *copy, const char *id)
{
  guint index = 0;
  BsLamination *lamination = edit_lamination (copy, split_defect_id (id, &index));
  return &g_array_index (lamination->defects, BsDefect, index);
}

const BsRecord bs_record_defect = { find_defect, edit_defect };

static gconstpointer
find_board_defect (const BsPlan *plan, const char *id)
{
  guint index = 0;
  const BsBoard *board = find_board (plan, split_defect_id (id, &index));
  return board != NULL ? get_defect (board->defects, index) : NULL;
}

static gpointer
edit_board_defect (BsPlan *copy, const char *id)
{
  guint index = 0;
  BsBoard *board = edit_board (copy, split_defect_id (id, &index));
  return &g_array_index (board->defects, BsDefect, index);
}

const BsRecord bs_record_board_defect = { find_board_defect, edit_board_defect };
