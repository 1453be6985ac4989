/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/words.h"

#include "core/money.h"
#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

char *
bs_words_value (const BsWorking *working, double value, BsQuantity quantity, BsUnitSystem units)
{
  if (quantity == BS_QUANTITY_MONEY && working->currency != NULL)
    return bs_money_format (value, working->currency);
  return bs_units_format (value, quantity, units);
}

static void
append_value (GString *text, const BsWorking *working, BsUnitSystem units)
{
  g_autofree char *value = bs_words_value (working, working->value, working->quantity, units);
  g_autofree char *low = bs_words_value (working, working->low, working->quantity, units);
  g_autofree char *high = bs_words_value (working, working->high, working->quantity, units);
  const char *title = _ (working->title);

  if (isnan (working->value))
    g_string_append_printf (text, "%s\n", title);
  else if (isnan (working->low) || isnan (working->high))
    /* Translators: what a number is, and its value. */
    g_string_append_printf (text, _ ("%s: %s\n"), title, value);
  else
    /* Translators: what a number is, its value, and the range that it may well have. */
    g_string_append_printf (text, _ ("%s: %s (%s to %s)\n"), title, value, low, high);
}

static void
append_term (GString *text, const BsWorking *working, const BsTerm *term, BsUnitSystem units)
{
  g_autofree char *value = bs_words_value (working, term->value, term->quantity, units);
  const char *source
      = term->source != NULL && *term->source != '\0' ? _ (term->source) : _ ("from the plan");

  if (*term->symbol != '\0')
    /* Translators: symbol in the formula, value, name of the value, where it comes from. */
    g_string_append_printf (text, _ ("%s = %s %s (%s)\n"), term->symbol, value, _ (term->name),
                            source);
  else
    /* Translators: name of a value, value, where it comes from. */
    g_string_append_printf (text, _ ("%s: %s (%s)\n"), _ (term->name), value, source);
  if (term->explanation != NULL && fabs (term->value) > 0.0)
    g_string_append_printf (text, "    %s\n", _ (term->explanation));
}

char *
bs_words_working (const BsWorking *working, BsUnitSystem units)
{
  GString *text = g_string_new (NULL);

  append_value (text, working, units);
  g_string_append_printf (text, "%s\n", _ (working->explanation));
  if (*working->formula != '\0')
    g_string_append_printf (text, "%s\n", working->formula);
  for (guint i = 0; i < working->n_terms; i++)
    append_term (text, working, &working->terms[i], units);
  g_string_append (text, _ (working->certainty));
  return g_string_free (text, FALSE);
}
