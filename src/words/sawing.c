/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/sawing.h"

#include <glib/gi18n-lib.h>

#include "core/money.h"
#include "core/sawing-lamination.h"
#include "core/sawing-move.h"
#include "core/units.h"
#include "words/words.h"

static char *
format_length (double mm, BsUnitSystem units)
{
  return bs_units_format (mm, BS_QUANTITY_LENGTH, units);
}

/* What was made of a board that is used up. */
static char *
describe_milled (const BsBoard *board, const BsPlan *plan)
{
  GString *labels = g_string_new (NULL);
  char *text;

  for (guint i = 0; i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (plan->laminations, i);

      if (g_strcmp0 (lamination->board, board->id) == 0)
        g_string_append_printf (labels, "%s%s", labels->len > 0 ? ", " : "",
                                bs_saw_piece_label (plan, lamination->id));
    }
  /* Translators: what is done with a board; %s: labels of laminations, "A1, A2". */
  text = g_strdup_printf (_ ("milled before into %s"), labels->str);
  g_string_free (labels, TRUE);
  return text;
}

/* What is done with a board that can be sawn. */
static char *
describe_work (const BsSawing *sawing, guint n_cuts, BsUnitSystem units)
{
  double offcut = sawing->offcut_to - sawing->offcut_from;
  const char *order = sawing->order == BS_CUT_RIP_FIRST ? _ ("ripped first") : _ ("crosscut first");
  g_autofree char *length = format_length (offcut, units);

  if (n_cuts == 0)
    return g_strdup (_ ("nothing is cut from it"));
  if (offcut <= 0.0)
    return g_strdup (order);
  /* Translators: how a board is sawn, and the length of what is left: "crosscut first, offcut 334
   * mm". */
  return g_strdup_printf (_ ("%s, offcut %s"), order, length);
}

char *
bs_words_sawn_board (const BsSawnBoard *board, const BsPlan *plan)
{
  const BsBoard *lumber = board->board;
  g_autofree char *length
      = bs_units_format_number (lumber->length, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *width = bs_units_format_number (lumber->width, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *thickness = format_length (lumber->thickness, plan->units);
  g_autofree char *fault = bs_sawn_board_tell_fault (board, plan);
  g_autofree char *work = bs_saw_is_used_up (plan, lumber)
                              ? describe_milled (lumber, plan)
                              : describe_work (board->sawing, board->cuts->len, plan->units);

  /* Translators: a board's label, its length, width and thickness, and what is done with it:
   * "Board 3: 3100 × 238 × 52 mm, crosscut first". */
  return g_strdup_printf (_ ("Board %s: %s × %s × %s, %s"), bs_saw_board_label (lumber), length,
                          width, thickness, fault != NULL ? fault : work);
}

const char *
bs_words_cut_state (const BsCut *cut)
{
  if (cut->is_cut)
    return C_ ("state of a piece", "cut");
  return cut->is_pinned ? C_ ("state of a piece", "pinned") : C_ ("state of a piece", "planned");
}

/* Where a defect of a lamination comes to lie in the slab. */
static const char *
name_place (const BsPlan *plan, int place, BsFace face)
{
  if (place >= 0)
    face = bs_orientation_face (g_array_index (plan->order, BsPlacement, place).orientation, face);
  switch (face)
    {
    case BS_FACE_TOP:
      return C_ ("where a defect lies", "on the show face");
    case BS_FACE_UNDERSIDE:
      return C_ ("where a defect lies", "on the underside");
    case BS_FACE_LEFT:
      return place == 0 ? C_ ("where a defect lies", "on the front")
                        : C_ ("where a defect lies", "in a glue line");
    case BS_FACE_RIGHT:
    default:
      return place == (int)plan->order->len - 1 ? C_ ("where a defect lies", "on the back")
                                                : C_ ("where a defect lies", "in a glue line");
    }
}

static void
add_defect (GString *text, const char *defect, const char *where)
{
  if (text->len > 0)
    g_string_append (text, "; ");
  /* Translators: a kind of defect, and where it lies: "knot: in a glue line". */
  g_string_append_printf (text, C_ ("defect", "%s: %s"), defect, where);
}

static void
add_lamination_defects (GString *text, const BsPlan *plan, const BsLamination *wished,
                        const BsBoard *board, const BsCut *cut)
{
  g_autoptr (BsPlan) laid = bs_plan_copy (plan);
  g_autoptr (BsLamination) milled = bs_saw_mill (plan, wished, board, cut);
  int place = bs_plan_find_place (plan, wished->id);

  bs_saw_turn_to_show (laid, milled);
  for (guint i = 0; i < milled->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (milled->defects, BsDefect, i);
      add_defect (text, bs_words_defect (defect->kind), name_place (laid, place, defect->face));
    }
}

static gboolean
is_on_piece (const BsDefect *defect, const BsCut *cut)
{
  return defect->x_from < cut->x + cut->length && defect->x_to > cut->x
         && defect->across_from < cut->y + cut->width && defect->across_to > cut->y;
}

static void
add_part_defects (GString *text, const BsBoard *board, const BsCut *cut)
{
  for (guint i = 0; i < board->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (board->defects, BsDefect, i);
      gboolean is_wide = defect->face == BS_FACE_TOP || defect->face == BS_FACE_UNDERSIDE;

      if (is_wide && is_on_piece (defect, cut))
        add_defect (text, bs_words_defect (defect->kind), bs_words_board_face (defect->face));
    }
}

char *
bs_words_cut_defects (const BsPlan *plan, const BsCut *cut)
{
  const BsBoard *board = bs_plan_find_board (plan, cut->board);
  const BsLamination *lamination = bs_plan_find_lamination (plan, cut->piece);
  GString *text = g_string_new (NULL);

  if (board != NULL && board->defects->len > 0 && lamination != NULL)
    add_lamination_defects (text, plan, lamination, board, cut);
  else if (board != NULL)
    add_part_defects (text, board, cut);
  return g_string_free (text, FALSE);
}

char *
bs_words_cut_blemish (const BsPlan *plan, const BsCut *cut)
{
  const BsSawBlemish blemish = bs_saw_find_blemish (plan, cut);
  const char *label = bs_saw_piece_label (plan, cut->piece);

  if (blemish.is_unsound)
    return g_strdup_printf (_ ("%s would have wood that is missing or split."), label);
  if (blemish.faces > 0)
    return g_strdup_printf (_ ("%s would have a defect on a wide face that must be clear."), label);
  if (blemish.edges > 0)
    return g_strdup_printf (_ ("%s would have a defect on an edge that must be clear."), label);
  return NULL;
}

static double
get_share_pct (const BsSawRack *rack, double area)
{
  return 100.0 * area / rack->area;
}

static void
add_sentence (GString *text, char *sentence)
{
  g_string_append_printf (text, "%s%s", text->len > 0 ? "  " : "", sentence);
  g_free (sentence);
}

static char *
compare_prices (const BsSawRack *before, const BsSawRack *after, const char *currency)
{
  g_autofree char *was = bs_money_format ((double)before->price_minor, currency);
  g_autofree char *is = bs_money_format ((double)after->price_minor, currency);

  if (before->price_minor == after->price_minor)
    /* Translators: a price. */
    return g_strdup_printf (_ ("Boards: %s, as before."), is);
  /* Translators: two prices. */
  return g_strdup_printf (_ ("Boards: %s, now %s."), was, is);
}

static char *
compare_waste (const BsSawRack *before, const BsSawRack *after, BsUnitSystem units)
{
  g_autofree char *was = bs_units_format (
      get_share_pct (before, before->kerf_area + before->waste_area), BS_QUANTITY_PERCENT, units);
  g_autofree char *is = bs_units_format (
      get_share_pct (after, after->kerf_area + after->waste_area), BS_QUANTITY_PERCENT, units);

  if (g_str_equal (was, is))
    /* Translators: a share in per cent. */
    return g_strdup_printf (_ ("Waste: %s, as before."), is);
  return g_strdup_printf (_ ("Waste: %s, now %s."), was, is);
}

char *
bs_words_cut_move (const BsPlan *before, const BsPlan *after, int cut)
{
  g_autoptr (BsSawRack) was = bs_saw_rack_new (before);
  g_autoptr (BsSawRack) is = bs_saw_rack_new (after);
  GString *text = g_string_new (NULL);
  char *blemish
      = cut >= 0 ? bs_words_cut_blemish (after, &g_array_index (after->cuts, BsCut, cut)) : NULL;

  add_sentence (text, compare_prices (was, is, after->currency));
  add_sentence (text, compare_waste (was, is, after->units));
  if (was->n_missing != is->n_missing)
    /* Translators: two numbers of pieces. */
    add_sentence (
        text, g_strdup_printf (_ ("Without a place: %u, now %u."), was->n_missing, is->n_missing));
  if (blemish != NULL)
    add_sentence (text, blemish);
  return g_string_free (text, FALSE);
}

char *
bs_words_saw_lack (const BsPlan *plan, const BsSawWish *wish)
{
  const BsSawLack lack = bs_saw_lack (plan, wish);
  g_autofree char *needed = format_length (lack.needed, plan->units);
  g_autofree char *most = format_length (lack.most, plan->units);

  switch (lack.kind)
    {
    case BS_SAW_LACK_USED:
    case BS_SAW_LACK_WOOD:
      return g_strdup (_ ("no board that is left is of its wood"));
    case BS_SAW_LACK_LENGTH:
      /* Translators: two lengths. */
      return g_strdup_printf (_ ("it needs %s of length, the longest board gives %s"), needed,
                              most);
    case BS_SAW_LACK_WIDTH:
      return g_strdup_printf (
          _ ("it needs %s of width, the best board that is long enough gives %s"), needed, most);
    case BS_SAW_LACK_THICKNESS:
      return g_strdup_printf (
          _ ("it is to be %s thick, the best board that is large enough finishes at %s"), needed,
          most);
    case BS_SAW_LACK_NONE:
    default:
      return g_strdup (plan->cuts->len == 0
                           ? _ ("not planned yet")
                           : _ ("no room beside the cuts as they lie; plan them anew"));
    }
}

static char *
list_passes (const BsSawing *sawing, gboolean is_rip, BsUnitSystem units)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < sawing->passes->len; i++)
    {
      const BsSawPass *pass = &g_array_index (sawing->passes, BsSawPass, i);
      g_autofree char *at = format_length (pass->at, units);

      if (pass->is_rip != is_rip)
        continue;
      if (text->len > 0)
        g_string_append (text, ", ");
      /* Translators: the number of a pass of the saw, and where it is. */
      g_string_append_printf (text, _ ("%u at %s"), i + 1, at);
    }
  return g_string_free (text, FALSE);
}

char *
bs_words_saw_passes (const BsSawing *sawing, gboolean is_rip, BsUnitSystem units)
{
  g_autofree char *list = list_passes (sawing, is_rip, units);

  if (*list == '\0')
    return NULL;
  if (is_rip)
    /* Translators: a list of numbers and distances: "4 at 70 mm, 5 at 143 mm". */
    return g_strdup_printf (_ ("Rip cuts, from the front edge: %s"), list);
  return g_strdup_printf (_ ("Crosscuts, from the left end: %s"), list);
}

char *
bs_words_saw_sum (const BsSawRack *rack, BsUnitSystem units)
{
  g_autofree char *area = bs_units_format (rack->area, BS_QUANTITY_AREA, units);
  g_autofree char *pieces
      = bs_units_format (get_share_pct (rack, rack->piece_area), BS_QUANTITY_PERCENT, units);
  g_autofree char *kerfs
      = bs_units_format (get_share_pct (rack, rack->kerf_area), BS_QUANTITY_PERCENT, units);
  g_autofree char *offcuts
      = bs_units_format (get_share_pct (rack, rack->offcut_area), BS_QUANTITY_PERCENT, units);
  g_autofree char *waste
      = bs_units_format (get_share_pct (rack, rack->waste_area), BS_QUANTITY_PERCENT, units);

  if (rack->n_taken == 0)
    return g_strdup ("");
  /* Translators: an area and four shares in per cent. */
  return g_strdup_printf (
      ngettext ("%u board of %s is %s pieces, %s kerfs, %s offcuts and %s other waste.",
                "%u boards of %s are %s pieces, %s kerfs, %s offcuts and %s other waste.",
                rack->n_taken),
      rack->n_taken, area, pieces, kerfs, offcuts, waste);
}

char *
bs_words_cut (const BsPlan *plan, const BsCut *cut)
{
  const BsBoard *board = bs_plan_find_board (plan, cut->board);
  g_autofree char *length = bs_units_format_number (cut->length, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *width = format_length (cut->width, plan->units);
  g_autofree char *x = format_length (cut->x, plan->units);
  g_autofree char *y = format_length (cut->y, plan->units);

  /* Translators: a piece, its length and width, a board, two distances, and its state. */
  return g_strdup_printf (
      _ ("%s, %s × %s, on board %s, %s from the left end, %s from the front edge, %s"),
      bs_saw_piece_label (plan, cut->piece), length, width,
      board != NULL ? bs_saw_board_label (board) : cut->board, x, y, bs_words_cut_state (cut));
}

static const BsCut *
find_cut (const BsPlan *plan, const char *piece)
{
  for (guint i = 0; i < plan->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, i);
      if (g_strcmp0 (cut->piece, piece) == 0)
        return cut;
    }
  return NULL;
}

char *
bs_words_origin (const BsPlan *plan, const BsLamination *lamination)
{
  const BsCut *cut = find_cut (plan, lamination->id);
  const char *id = cut != NULL ? cut->board : lamination->board;
  const BsBoard *board = id != NULL ? bs_plan_find_board (plan, id) : NULL;

  if (board == NULL)
    return NULL;
  if (cut == NULL)
    /* Translators: the label of the board that a lamination was cut from. */
    return g_strdup_printf (_ ("From board %s."), bs_saw_board_label (board));
  g_autofree char *along = format_length (cut->x, plan->units);
  g_autofree char *across = format_length (cut->y, plan->units);
  /* Translators: the label of the board that a lamination is cut from, and two lengths. */
  return g_strdup_printf (_ ("From board %s, %s from its left end and %s from its front edge."),
                          bs_saw_board_label (board), along, across);
}
