/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/board-columns.h"

#include "config.h"
#include "core/lumber-sizes.h"
#include "core/money.h"
#include "core/text.h"
#include "core/units.h"
#include "plan/document.h"
#include "plan/tables.h"
#include "words/table-names.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* A thickness is a class when it differs from it by less, mm: what is typed and read again. */
#define MOST_LABEL_CHARS 60
#define SAME_THICKNESS 0.01

#define NUMBER(key, title, hint, member, limit, is_needed)                                         \
  {                                                                                                \
    key, title, hint, G_STRUCT_OFFSET (BsBoard, member), &bs_limits.limit, is_needed               \
  }
#define OTHER(key, title, hint)                                                                    \
  {                                                                                                \
    key, title, hint, 0, NULL, FALSE                                                               \
  }

#define RUN_OUT(key, title, face)                                                                  \
  {                                                                                                \
    key, title, N_ ("Towards which end, as the fibres rise there"),                                \
        G_STRUCT_OFFSET (BsBoard, run_out[face]), NULL, FALSE                                      \
  }

const BsBoardColumnInfo bs_board_columns[BS_N_BOARD_COLUMNS] = {
  [BS_BOARD_LABEL] = OTHER ("label", N_ ("Label"), N_ ("What is written on the wood")),
  [BS_BOARD_WOOD]
  = OTHER ("wood", N_ ("Wood"), N_ ("Its name, or as much of it as tells it apart")),
  [BS_BOARD_THICKNESS]
  = NUMBER ("thickness", N_ ("Thickness"), N_ ("By class, such as 8/4, or measured"), thickness,
            board_thickness, TRUE),
  [BS_BOARD_WIDTH]
  = NUMBER ("width", N_ ("Width"), N_ ("At the narrowest place"), width, board_width, TRUE),
  [BS_BOARD_LENGTH] = NUMBER ("length", N_ ("Length"), NULL, length, board_length, TRUE),
  [BS_BOARD_MOISTURE]
  = NUMBER ("moisture", N_ ("Moisture"),
            N_ ("By the meter, corrected for wood and temperature; empty: unknown"), moisture_pct,
            moisture, FALSE),
  [BS_BOARD_PRICE]
  = OTHER ("price", N_ ("Price"), N_ ("Of the whole board; empty: paid, or not known")),
  [BS_BOARD_BOW]
  = NUMBER ("bow", N_ ("Bow"), N_ ("Middle off a line between the ends; plus: upwards"), bow, warp,
            FALSE),
  [BS_BOARD_CROOK]
  = NUMBER ("crook", N_ ("Crook"),
            N_ ("Middle of the edge off a line between the ends; plus: towards the back edge"),
            crook, warp, FALSE),
  [BS_BOARD_CUP]
  = NUMBER ("cup", N_ ("Cup"), N_ ("Hollow across the wide face; plus: the middle upwards"), cup,
            warp, FALSE),
  [BS_BOARD_TWIST]
  = NUMBER ("twist", N_ ("Twist"), N_ ("One corner off the bench with the other three down"), twist,
            warp, FALSE),
  [BS_BOARD_PITH_Y] = NUMBER (
      "pith_y", N_ ("Pith, front to back"),
      N_ ("Centre of the growth rings, from the middle of the end grain; mostly outside of the "
          "wood"),
      pith_y, pith, FALSE),
  [BS_BOARD_PITH_Z]
  = NUMBER ("pith_z", N_ ("Pith, upwards"),
            N_ ("From the middle of the end grain; minus: below it"), pith_z, pith, FALSE),
  [BS_BOARD_RUN_OUT_TOP] = RUN_OUT ("run_out_top", N_ ("Top planes cleanly"), BS_FACE_TOP),
  [BS_BOARD_RUN_OUT_UNDERSIDE]
  = RUN_OUT ("run_out_underside", N_ ("Underside planes cleanly"), BS_FACE_UNDERSIDE),
  [BS_BOARD_RUN_OUT_FRONT]
  = RUN_OUT ("run_out_front", N_ ("Front edge planes cleanly"), BS_FACE_LEFT),
  [BS_BOARD_RUN_OUT_BACK]
  = RUN_OUT ("run_out_back", N_ ("Back edge planes cleanly"), BS_FACE_RIGHT),
};

void
bs_board_reader_init (BsBoardReader *self, const BsPlan *plan)
{
  *self = (BsBoardReader){
    .units = plan->units,
    .currency = plan->currency,
    .woods = g_ptr_array_copy (plan->woods, (GCopyFunc)bs_wood_ref, NULL),
  };
  g_ptr_array_set_free_func (self->woods, (GDestroyNotify)bs_wood_unref);
}

void
bs_board_reader_clear (BsBoardReader *self)
{
  g_clear_pointer (&self->woods, g_ptr_array_unref);
}

/* Woods. */

static gboolean
fail (GError **error, const char *sentence)
{
  g_set_error_literal (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE, sentence);
  return FALSE;
}

static gboolean
is_exactly (const BsWood *wood, const char *folded)
{
  g_autofree char *translated = g_utf8_casefold (bs_words_wood (wood), -1);
  g_autofree char *name = g_utf8_casefold (wood->name != NULL ? wood->name : "", -1);
  g_autofree char *botanical = g_utf8_casefold (wood->botanical != NULL ? wood->botanical : "", -1);

  return g_str_equal (name, folded) || g_str_equal (translated, folded)
         || g_str_equal (botanical, folded) || g_ascii_strcasecmp (wood->id, folded) == 0;
}

/* Whether each word that was typed begins a word of a name: "red oak" is "Oak, northern red". */
static gboolean
is_in_name (const char *name, char **words)
{
  g_auto (GStrv) own = g_str_tokenize_and_fold (name, NULL, NULL);

  for (char **word = words; *word != NULL; word++)
    {
      gboolean is_found = FALSE;
      for (char **candidate = own; *candidate != NULL && !is_found; candidate++)
        is_found = g_str_has_prefix (*candidate, *word);
      if (!is_found)
        return FALSE;
    }
  return *words != NULL;
}

/* In the table's language or in the person's. */
static gboolean
is_meant (const BsWood *wood, char **words)
{
  return is_in_name (wood->name != NULL ? wood->name : "", words)
         || is_in_name (bs_words_wood (wood), words);
}

/* The wood that is exactly of that name, or the only one that may be meant. */
static BsWood *
find_wood (const GPtrArray *woods, const char *folded, char **words, BsWood **second)
{
  BsWood *first = NULL;

  *second = NULL;
  for (guint i = 0; i < woods->len; i++)
    if (is_exactly (woods->pdata[i], folded))
      return woods->pdata[i];
  for (guint i = 0; i < woods->len; i++)
    {
      if (!is_meant (woods->pdata[i], words))
        continue;
      if (first == NULL)
        first = woods->pdata[i];
      else if (*second == NULL)
        *second = woods->pdata[i];
    }
  return first;
}

static gboolean
fail_wood (const char *text, const BsWood *first, const BsWood *second, GError **error)
{
  g_autofree char *found = bs_text_excerpt (text);
  g_autofree char *sentence
      = first == NULL
            /* Translators: %s is what was typed. */
            ? g_strdup_printf (
                _ ("%s: no wood of that name is known. Expected is one of the plan or "
                   "of the table of woods."),
                found)
            /* Translators: what was typed, and the names of two woods. */
            : g_strdup_printf (_ ("%s: this could be %s or %s. Write more of the name."), found,
                               bs_words_wood (first), bs_words_wood (second));
  return fail (error, sentence);
}

static gboolean
read_wood (BsBoard *board, const char *text, BsBoardReader *reader, GError **error)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  g_auto (GStrv) words = g_str_tokenize_and_fold (text, NULL, NULL);
  BsWood *second = NULL;
  BsWood *wood = find_wood (reader->woods, folded, words, &second);

  if (wood == NULL)
    {
      wood = find_wood (bs_tables_get_woods (), folded, words, &second);
      if (wood != NULL && second == NULL)
        g_ptr_array_add (reader->woods, bs_wood_ref (wood));
    }
  if (wood == NULL || second != NULL)
    return fail_wood (text, wood, second, error);
  bs_text_set (&board->wood, wood->id);
  return TRUE;
}

/* Numbers. */

static gboolean
fail_range (const char *text, const char *least, const char *most, GError **error)
{
  g_autofree char *found = bs_text_excerpt (text);
  g_autofree char *sentence
      /* Translators: what was typed, the least and the most that can be. */
      = g_strdup_printf (_ ("%s: expected is something from %s to %s."), found, least, most);

  return fail (error, sentence);
}

static gboolean
read_number (BsBoard *board, const BsBoardColumnInfo *info, const char *text,
             const BsBoardReader *reader, GError **error)
{
  double value = NAN;

  if (*text != '\0' || info->is_needed)
    {
      if (!bs_units_parse (text, info->limit->quantity, reader->units, &value, error))
        return FALSE;
      if (!bs_limit_contains (info->limit, value))
        {
          const BsLimit *limit = info->limit;
          g_autofree char *least = bs_units_format (limit->least, limit->quantity, reader->units);
          g_autofree char *most = bs_units_format (limit->most, limit->quantity, reader->units);
          return fail_range (text, least, most, error);
        }
    }
  G_STRUCT_MEMBER (double, board, info->offset) = value;
  return TRUE;
}

static gboolean
read_price (BsBoard *board, const char *text, const BsBoardReader *reader, GError **error)
{
  double minor = 0.0;

  if (*text != '\0' && !bs_money_parse (text, reader->currency, &minor, error))
    return FALSE;
  if (!bs_limit_contains (&bs_limits.price, minor))
    {
      g_autofree char *most = bs_money_format (bs_limits.price.most, reader->currency);
      g_autofree char *least = bs_money_format (bs_limits.price.least, reader->currency);
      return fail_range (text, least, most, error);
    }
  board->price_minor = (gint64)minor;
  return TRUE;
}

/* Run-out: the end in the table's language, to be read in any, or as plan files have it. */

static gboolean
is_run_out (BsBoardColumn column)
{
  return column >= BS_BOARD_RUN_OUT_TOP && column <= BS_BOARD_RUN_OUT_BACK;
}

static const char *
name_run_out (int run_out)
{
  static const char *const names[] = { "left", "", "right" };

  return names[run_out + 1];
}

static gboolean
read_run_out (BsBoard *board, const BsBoardColumnInfo *info, const char *text, GError **error)
{
  for (int run_out = -1; run_out <= 1; run_out++)
    {
      g_autofree char *number = g_strdup_printf ("%d", run_out);

      if (g_ascii_strcasecmp (text, name_run_out (run_out)) != 0 && !g_str_equal (text, number))
        continue;
      G_STRUCT_MEMBER (int, board, info->offset) = run_out;
      return TRUE;
    }
  g_autofree char *found = bs_text_excerpt (text);
  /* Translators: %s is what was typed; left and right are written so in every language. */
  g_autofree char *sentence = g_strdup_printf (
      _ ("%s: expected is the end towards which it planes cleanly, left or right, or nothing."),
      found);
  return fail (error, sentence);
}

/* Labels stand on boards, in tables and on paper: a page that was pasted by mistake is none. */
static gboolean
read_label (BsBoard *board, const char *text, GError **error)
{
  if (g_utf8_strlen (text, -1) > MOST_LABEL_CHARS)
    {
      g_autofree char *found = bs_text_excerpt (text);
      g_autofree char *sentence
          /* Translators: what was typed, and how many letters there may be. */
          = g_strdup_printf (_ ("%s: expected are no more than %d letters and figures."), found,
                             MOST_LABEL_CHARS);
      return fail (error, sentence);
    }
  bs_text_set (&board->label, *text != '\0' ? text : NULL);
  return TRUE;
}

gboolean
bs_board_read (BsBoard *board, BsBoardColumn column, const char *text, BsBoardReader *reader,
               GError **error)
{
  g_return_val_if_fail ((guint)column < BS_N_BOARD_COLUMNS && text != NULL, FALSE);

  g_autofree char *bare = g_strstrip (g_strdup (text));
  if (bs_board_columns[column].limit != NULL)
    return read_number (board, &bs_board_columns[column], bare, reader, error);
  if (is_run_out (column))
    return read_run_out (board, &bs_board_columns[column], bare, error);
  if (column == BS_BOARD_PRICE)
    return read_price (board, bare, reader, error);
  if (column == BS_BOARD_WOOD && *bare != '\0')
    return read_wood (board, bare, reader, error);
  if (column == BS_BOARD_LABEL)
    return read_label (board, bare, error);
  bs_text_set (&board->wood, NULL);
  return TRUE;
}

/* Writing. */

static char *
format_wood (const BsBoard *board, const BsPlan *plan)
{
  const BsWood *wood = board->wood != NULL ? bs_plan_find_wood (plan, board->wood) : NULL;

  return g_strdup (wood != NULL ? bs_words_wood (wood) : "");
}

static const char *
find_class (double thickness)
{
  const BsLumberSeries *series = bs_lumber_series (BS_LUMBER_QUARTERS);

  for (guint i = 0; i < series->n_rows; i++)
    if (fabs (series->rows[i].sold - thickness) < SAME_THICKNESS)
      return series->rows[i].name;
  return NULL;
}

char *
bs_board_format (const BsBoard *board, BsBoardColumn column, const BsPlan *plan)
{
  g_return_val_if_fail ((guint)column < BS_N_BOARD_COLUMNS, NULL);

  const BsBoardColumnInfo *info = &bs_board_columns[column];
  const char *class = column == BS_BOARD_THICKNESS ? find_class (board->thickness) : NULL;
  if (class != NULL)
    return g_strdup (class);
  if (info->limit != NULL)
    {
      double value = G_STRUCT_MEMBER (double, board, info->offset);
      return isnan (value) ? g_strdup ("")
                           : bs_units_format_number (value, info->limit->quantity, plan->units);
    }
  if (column == BS_BOARD_PRICE)
    return board->price_minor > 0
               ? bs_money_format_number ((double)board->price_minor, plan->currency)
               : g_strdup ("");
  if (is_run_out (column))
    return g_strdup (name_run_out (G_STRUCT_MEMBER (int, board, info->offset)));
  if (column == BS_BOARD_WOOD)
    return format_wood (board, plan);
  return g_strdup (board->label != NULL ? board->label : "");
}

char *
bs_board_column_title (BsBoardColumn column, const BsPlan *plan)
{
  const BsBoardColumnInfo *info = &bs_board_columns[column];
  const char *unit = NULL;

  if (column == BS_BOARD_PRICE)
    unit = plan->currency;
  else if (info->limit != NULL && info->limit->quantity != BS_QUANTITY_LENGTH)
    unit = bs_units_symbol (info->limit->quantity, plan->units);
  /* Translators: a column's title: what is measured, its unit */
  return unit != NULL ? g_strdup_printf (_ ("%s, %s"), _ (info->title), unit)
                      : g_strdup (_ (info->title));
}
