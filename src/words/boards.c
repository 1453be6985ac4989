/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/boards.h"

#include "core/board-measure.h"
#include "core/money.h"
#include "core/units.h"
#include "words/buying.h"
#include "words/timber.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
count_lengths (const BsBoardForecast *forecast, BsUnitSystem units)
{
  g_autofree char *length = bs_units_format (forecast->crosscut.length, BS_QUANTITY_LENGTH, units);

  if (forecast->n_lengths == 0)
    /* Translators: %s is a length; what follows is the number of strips */
    return g_strdup_printf (_ ("shorter than the slab, %s"), length);
  return g_strdup_printf (
      /* Translators: number of pieces along a board, and the length of each */
      ngettext ("%d length of %s", "%d lengths of %s", (gulong)forecast->n_lengths),
      forecast->n_lengths, length);
}

static char *
count_strips (const BsBoardForecast *forecast, BsUnitSystem units)
{
  g_autofree char *width
      = bs_units_format (isnan (forecast->width) ? forecast->crosscut.width : forecast->width,
                         BS_QUANTITY_LENGTH, units);

  if (isnan (forecast->width))
    /* Translators: %s is a width */
    return g_strdup_printf (_ ("in its whole width, %s"), width);
  if (forecast->n_strips == 0)
    /* Translators: %s is a width */
    return g_strdup_printf (_ ("too narrow for a strip of %s"), width);
  return g_strdup_printf (
      /* Translators: number of strips side by side in a board, and the width of each */
      ngettext ("%d strip of %s", "%d strips of %s", (gulong)forecast->n_strips),
      forecast->n_strips, width);
}

char *
bs_words_board_pieces (const BsBoardForecast *forecast, BsUnitSystem units)
{
  g_autofree char *lengths = count_lengths (forecast, units);
  g_autofree char *strips = count_strips (forecast, units);

  /* Translators: "2 lengths of 1500 mm; 3 strips of 64 mm": what is cut from a board */
  return g_strdup_printf (_ ("%s; %s"), lengths, strips);
}

/* NULL when no board has one. */
static char *
sum_prices (const BsBoardsSum *sum, const char *currency)
{
  g_autofree char *price = bs_money_format ((double)sum->price_minor, currency);

  if (sum->n_priced == 0)
    return NULL;
  if (sum->n_priced == sum->n)
    /* Translators: %s is money */
    return g_strdup_printf (_ ("Prices together: %s."), price);
  return g_strdup_printf (ngettext ("Price of the %u board that has one: %s.",
                                    "Prices of the %u boards that have one, together: %s.",
                                    sum->n_priced),
                          sum->n_priced, price);
}

char *
bs_words_boards_sum (const GPtrArray *boards, const char *currency)
{
  BsBoardsSum sum = bs_boards_sum (boards);
  g_autofree char *measure = bs_words_measure (sum.board_feet, sum.volume);
  g_autofree char *price = sum_prices (&sum, currency);
  /* Translators: how many boards, and their board feet and cubic metres. */
  g_autofree char *count
      = g_strdup_printf (ngettext ("%u board: %s.", "%u boards: %s.", sum.n), sum.n, measure);

  return price != NULL ? g_strjoin (" ", count, price, NULL) : g_steal_pointer (&count);
}

char **
bs_words_board_cautions (const BsBoardForecast *forecast, const BsPlan *plan)
{
  BsMillingShop shop = bs_milling_shop_of (plan);
  g_auto (GStrv) milling = bs_words_milling (&forecast->crosscut, &shop, plan->units);
  GPtrArray *sentences = g_ptr_array_new ();

  if (forecast->thickness <= 0.0)
    g_ptr_array_add (sentences, g_strdup (_ ("Nothing is left of it once it is flat.")));
  for (char **sentence = milling; *sentence != NULL; sentence++)
    g_ptr_array_add (sentences, g_strdup (*sentence));
  if (!forecast->is_measured)
    g_ptr_array_add (sentences, g_strdup (_ ("Its bow, cup and twist are not all measured; what is "
                                             "not counts as none.")));
  g_ptr_array_add (sentences, NULL);
  return (char **)g_ptr_array_free (sentences, FALSE);
}

char *
bs_words_photo_title (const BsBoard *board)
{
  return g_strdup_printf (_ ("A photo of board %s is missing"),
                          board->label != NULL ? board->label : board->id);
}

char *
bs_words_photo_reason (const char *path, const char *problem)
{
  /* Translators: the path of a file, and what the system says of it */
  return g_strdup_printf (_ ("The photo %s cannot be shown: %s."), path, problem);
}

const char *
bs_words_photo_remedy (void)
{
  return _ ("The plan keeps its name: put the file back, or choose another at the place “Boards”.");
}
