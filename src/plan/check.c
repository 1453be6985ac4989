/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/check.h"

#include "config.h"
#include "core/limits.h"
#include "core/packs.h"
#include "plan/document.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Lists of parts are searched alike: each part begins with its id. */
G_STATIC_ASSERT (G_STRUCT_OFFSET (BsClampKind, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (BsCaulKind, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (BsWood, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (BsBoard, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (BsOffer, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (BsPart, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (BsLamination, id) == 0);

typedef struct
{
  const BsPlan *plan;
  GHashTable *woods; /* sets of borrowed ids */
  GHashTable *boards;
  GHashTable *laminations;
  GHashTable *pieces; /* laminations and parts */
  GError **error;
} Check;

static gboolean fail_text (Check *self, const char *expected, const char *value,
                           const char *where_format, ...) G_GNUC_PRINTF (4, 5);
static gboolean fail_number (Check *self, const char *expected, double value,
                             const char *where_format, ...) G_GNUC_PRINTF (4, 5);

static gboolean
fail_text (Check *self, const char *expected, const char *value, const char *where_format, ...)
{
  va_list args;
  va_start (args, where_format);
  g_autofree char *where = g_strdup_vprintf (where_format, args);
  va_end (args);

  g_set_error (self->error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
               /* Translators: the place in a file, the text that stands there, what should. */
               _ ("%s is the text “%s” where %s is expected; correct it"), where, value, expected);
  return FALSE;
}

static gboolean
fail_number (Check *self, const char *expected, double value, const char *where_format, ...)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  va_list args;
  va_start (args, where_format);
  g_autofree char *where = g_strdup_vprintf (where_format, args);
  va_end (args);

  g_set_error (self->error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
               /* Translators: the place in a file, what stands there, what should. */
               _ ("%s is %s where %s is expected; correct it"), where,
               g_ascii_formatd (digits, sizeof digits, "%.10g", value), expected);
  return FALSE;
}

static gboolean
fail_missing (Check *self, const char *expected, const char *where)
{
  g_set_error (self->error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
               /* Translators: the place in a file and what should stand there. */
               _ ("%s is missing where %s is expected; add it"), where, expected);
  return FALSE;
}

/* Collects the ids of a list, each of which may be there once. */
static gboolean
check_ids (Check *self, const GPtrArray *parts, GHashTable *ids, const char *key)
{
  for (guint i = 0; i < parts->len; i++)
    {
      char *id = *(char **)parts->pdata[i];
      if (!g_hash_table_add (ids, id))
        return fail_text (self, _ ("an id that no other one has"), id, "%s[%u].id", key, i);
    }
  return TRUE;
}

static gboolean
check_kinds (Check *self, const GPtrArray *kinds, const char *key)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  return check_ids (self, kinds, ids, key);
}

static gboolean
check_currency (Check *self)
{
  const char *code = self->plan->currency;

  for (guint i = 0; i < 3; i++)
    if (!g_ascii_isupper (code[i]))
      return fail_text (self, _ ("a currency of three capital letters like “EUR”"), code,
                        "currency");
  return code[3] == '\0'
         || fail_text (self, _ ("a currency of three capital letters like “EUR”"), code,
                       "currency");
}

static gboolean
check_adhesive (Check *self)
{
  const BsAdhesive *adhesive = &self->plan->adhesive;

  if (adhesive->total_s < adhesive->open_s)
    return fail_number (self, _ ("a time not shorter than open_s"), adhesive->total_s,
                        "adhesive.total_s");
  if (adhesive->max_pressure_mpa < adhesive->min_pressure_mpa)
    return fail_number (self, _ ("a pressure not below min_pressure_MPa"),
                        adhesive->max_pressure_mpa, "adhesive.max_pressure_MPa");
  return TRUE;
}

static gboolean
check_slab (Check *self)
{
  const BsSlab *slab = &self->plan->slab;

  if (slab->hardness_high_n < slab->hardness_low_n) /* not for NAN */
    return fail_number (self, _ ("a hardness not below hardness_low_N"), slab->hardness_high_n,
                        "slab.hardness_high_N");
  return TRUE;
}

static gboolean
check_wood (Check *self, const char *wood, const char *key, guint i)
{
  return wood == NULL || g_hash_table_contains (self->woods, wood)
         || fail_text (self, _ ("the id of one of the woods"), wood, "%s[%u].wood", key, i);
}

double
bs_check_breadth (const BsLamination *lamination, BsFace face)
{
  if (face == BS_FACE_TOP || face == BS_FACE_UNDERSIDE)
    return lamination->thickness;
  return lamination->height + fmax (0.0, lamination->taper); /* 0 when not measured */
}

/* `where` is the thing that has the defect, as "laminations[3]". */
static gboolean
check_defect (Check *self, const BsDefect *defect, double length, double breadth, const char *where,
              guint j)
{
  if (defect->x_to > length)
    return fail_number (self, _ ("a place within the length"), defect->x_to,
                        "%s.defects[%u].x_to_mm", where, j);
  if (defect->x_from > defect->x_to)
    return fail_number (self, _ ("a place not beyond x_to_mm"), defect->x_from,
                        "%s.defects[%u].x_from_mm", where, j);
  if (defect->across_to > breadth)
    return fail_number (self, _ ("a place within the face"), defect->across_to,
                        "%s.defects[%u].across_to_mm", where, j);
  if (defect->across_from > defect->across_to)
    return fail_number (self, _ ("a place not beyond across_to_mm"), defect->across_from,
                        "%s.defects[%u].across_from_mm", where, j);
  return TRUE;
}

static gboolean
check_boards (Check *self)
{
  for (guint i = 0; i < self->plan->boards->len; i++)
    {
      const BsBoard *board = self->plan->boards->pdata[i];
      g_autofree char *where = g_strdup_printf ("boards[%u]", i);

      if (!check_wood (self, board->wood, "boards", i))
        return FALSE;
      for (guint j = 0; j < board->defects->len; j++)
        {
          const BsDefect *defect = &g_array_index (board->defects, BsDefect, j);

          if (!check_defect (self, defect, board->length, bs_board_breadth (board, defect->face),
                             where, j))
            return FALSE;
        }
    }
  return TRUE;
}

static gboolean
check_offers (Check *self)
{
  for (guint i = 0; i < self->plan->offers->len; i++)
    {
      const BsOffer *offer = self->plan->offers->pdata[i];

      if (!check_wood (self, offer->wood, "offers", i))
        return FALSE;
      if (offer->width_most < offer->width_least)
        return fail_number (self, _ ("a width not below width_from_mm"), offer->width_most,
                            "offers[%u].width_to_mm", i);
    }
  return TRUE;
}

static gboolean
check_parts (Check *self)
{
  for (guint i = 0; i < self->plan->parts->len; i++)
    {
      const BsPart *part = self->plan->parts->pdata[i];

      if (!check_wood (self, part->wood, "parts", i))
        return FALSE;
    }
  return TRUE;
}

/* How often a piece may be cut. */
static guint
count_wanted (const Check *self, const char *piece)
{
  const BsPart *part = bs_plan_find_part (self->plan, piece);

  return part != NULL ? (guint)part->count : 1;
}

static gboolean
check_cuts (Check *self)
{
  g_autoptr (GHashTable) counts = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < self->plan->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (self->plan->cuts, BsCut, i);

      if (!g_hash_table_contains (self->boards, cut->board))
        return fail_text (self, _ ("the id of one of the boards"), cut->board, "cuts[%u].board", i);
      if (!g_hash_table_contains (self->pieces, cut->piece))
        return fail_text (self, _ ("the id of one of the laminations or parts"), cut->piece,
                          "cuts[%u].piece", i);
      const guint count = GPOINTER_TO_UINT (g_hash_table_lookup (counts, cut->piece)) + 1;
      if (count > count_wanted (self, cut->piece))
        return fail_text (self, _ ("a piece that is still to be cut"), cut->piece, "cuts[%u].piece",
                          i);
      g_hash_table_insert (counts, cut->piece, GUINT_TO_POINTER (count));
    }
  return TRUE;
}

static gboolean
check_lamination (Check *self, guint i)
{
  const BsLamination *lamination = self->plan->laminations->pdata[i];

  g_autofree char *where = g_strdup_printf ("laminations[%u]", i);

  if (!check_wood (self, lamination->wood, "laminations", i))
    return FALSE;
  if (lamination->board != NULL && !g_hash_table_contains (self->boards, lamination->board))
    return fail_text (self, _ ("the id of one of the boards"), lamination->board,
                      "laminations[%u].board", i);
  if (lamination->height + lamination->taper < bs_limits.lamination_height.least)
    return fail_number (self, _ ("a taper that leaves some height at the right end"),
                        lamination->taper, "laminations[%u].taper_mm", i);
  for (guint j = 0; j < lamination->defects->len; j++)
    {
      const BsDefect *defect = &g_array_index (lamination->defects, BsDefect, j);

      if (!check_defect (self, defect, lamination->length,
                         bs_check_breadth (lamination, defect->face), where, j))
        return FALSE;
    }
  return TRUE;
}

static gboolean
check_laminations (Check *self)
{
  for (guint i = 0; i < self->plan->laminations->len; i++)
    if (!check_lamination (self, i))
      return FALSE;
  return TRUE;
}

static gboolean
check_order (Check *self)
{
  g_autoptr (GHashTable) placed = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < self->plan->order->len; i++)
    {
      char *id = g_array_index (self->plan->order, BsPlacement, i).lamination;
      if (!g_hash_table_contains (self->laminations, id))
        return fail_text (self, _ ("the id of one of the laminations"), id, "order[%u].lamination",
                          i);
      if (!g_hash_table_add (placed, id))
        return fail_text (self, _ ("a lamination that is not in the order yet"), id,
                          "order[%u].lamination", i);
    }
  return TRUE;
}

static gboolean
check_pack (Check *self, guint number)
{
  const BsPack *packs = (const BsPack *)(const void *)self->plan->packs->data;
  const BsPack *pack = &packs[number];

  if (number > 0 && bs_packs_compare (&packs[number - 1], pack) >= 0)
    return fail_number (self, _ ("a later place than in the pack before it, or a smaller pack"),
                        pack->first, "packs[%u].first", number);
  for (guint i = 0; i < number; i++)
    if (!bs_packs_fit (&packs[i], pack))
      return fail_number (self, _ ("a place apart from every other pack, or a pack within another"),
                          pack->first, "packs[%u].first", number);
  if (pack->first + pack->count > (int)self->plan->order->len)
    return fail_number (self, _ ("a number of laminations that the order has"), pack->count,
                        "packs[%u].count", number);
  return TRUE;
}

static gboolean
check_packs (Check *self)
{
  for (guint i = 0; i < self->plan->packs->len; i++)
    if (!check_pack (self, i))
      return FALSE;
  return TRUE;
}

static gboolean
check_placed_clamps (Check *self)
{
  for (guint i = 0; i < self->plan->placed_clamps->len; i++)
    {
      const char *kind = g_array_index (self->plan->placed_clamps, BsPlacedClamp, i).kind;
      if (bs_plan_find_clamp_kind (self->plan, kind) < 0)
        return fail_text (self, _ ("the id of one of the shop’s clamps"), kind,
                          "placed_clamps[%u].kind", i);
    }
  return TRUE;
}

static gboolean
check_pin (Check *self, const BsPin *pin, guint i)
{
  g_autofree char *place = g_strdup_printf ("pins[%u].place", i);
  g_autofree char *other = g_strdup_printf ("pins[%u].other", i);

  if (!g_hash_table_contains (self->laminations, pin->lamination))
    return fail_text (self, _ ("the id of one of the laminations"), pin->lamination,
                      "pins[%u].lamination", i);
  if (pin->kind == BS_PIN_PLACE && pin->place < 0)
    return fail_missing (self, _ ("a place in the order"), place);
  if (pin->kind != BS_PIN_PLACE && pin->place >= 0)
    return fail_number (self, _ ("nothing in a pin of this kind"), pin->place, "%s", place);
  if (pin->kind != BS_PIN_NEIGHBOURS)
    return pin->other == NULL
           || fail_text (self, _ ("nothing in a pin of this kind"), pin->other, "%s", other);
  if (pin->other == NULL)
    return fail_missing (self, _ ("the id of another lamination"), other);
  return (g_hash_table_contains (self->laminations, pin->other)
          && !g_str_equal (pin->other, pin->lamination))
         || fail_text (self, _ ("the id of another lamination"), pin->other, "%s", other);
}

static gboolean
check_pins (Check *self)
{
  for (guint i = 0; i < self->plan->pins->len; i++)
    if (!check_pin (self, &g_array_index (self->plan->pins, BsPin, i), i))
      return FALSE;
  return TRUE;
}

gboolean
bs_check_plan (const BsPlan *plan, GError **error)
{
  g_autoptr (GHashTable) woods = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) boards = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) laminations = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) pieces = g_hash_table_new (g_str_hash, g_str_equal);
  Check check = { plan, woods, boards, laminations, pieces, error };

  return check_currency (&check) && check_slab (&check) && check_adhesive (&check)
         && check_kinds (&check, plan->shop.clamps, "shop.clamps")
         && check_kinds (&check, plan->shop.cauls, "shop.cauls")
         && check_ids (&check, plan->woods, woods, "woods")
         && check_ids (&check, plan->boards, boards, "boards")
         && check_ids (&check, plan->laminations, laminations, "laminations")
         && check_kinds (&check, plan->offers, "offers")
         && check_ids (&check, plan->laminations, pieces, "laminations")
         && check_ids (&check, plan->parts, pieces, "parts") && check_boards (&check)
         && check_offers (&check) && check_parts (&check) && check_cuts (&check)
         && check_laminations (&check) && check_order (&check) && check_packs (&check)
         && check_placed_clamps (&check) && check_pins (&check);
}
