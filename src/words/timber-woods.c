/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/timber.h"

#include "core/money.h"
#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const char *
bs_words_planing (BsPlaning planing)
{
  switch (planing)
    {
    case BS_PLANING_LIGHT:
      return C_ ("planing a wood by hand", "light");
    case BS_PLANING_MODERATE:
      return C_ ("planing a wood by hand", "moderate");
    case BS_PLANING_HARD:
      return C_ ("planing a wood by hand", "hard");
    case BS_PLANING_VERY_HARD:
      return C_ ("planing a wood by hand", "very hard");
    case BS_PLANING_UNKNOWN:
    default:
      return C_ ("planing a wood by hand", "not known");
    }
}

const char *
bs_words_bond (BsBond bond)
{
  switch (bond)
    {
    case BS_BOND_EASY:
      return C_ ("gluing a wood", "bonds easily");
    case BS_BOND_WELL:
      return C_ ("gluing a wood", "bonds well");
    case BS_BOND_SATISFACTORY:
      return C_ ("gluing a wood", "bonds satisfactorily");
    case BS_BOND_DIFFICULT:
      return C_ ("gluing a wood", "bonds with difficulty");
    case BS_BOND_UNKNOWN:
    default:
      return C_ ("gluing a wood", "not known");
    }
}

/* What the wood has and what was asked, in words. */
static void
format_values (BsUnfit reason, const BsWoodCard *card, const BsWoodWish *wish, const char *currency,
               BsUnitSystem units, char **has, char **asked)
{
  BsQuantity quantity = BS_QUANTITY_LENGTH;
  double value = card->movement, limit = wish->limits.max_movement;

  if (reason == BS_UNFIT_DEAR)
    {
      *has = bs_money_format (card->cost_minor, currency);
      *asked = bs_money_format (wish->limits.max_cost_minor, currency);
      return;
    }
  if (reason == BS_UNFIT_SOFT || reason == BS_UNFIT_HARD)
    {
      quantity = BS_QUANTITY_FORCE;
      value = card->hardness_n;
      limit = reason == BS_UNFIT_SOFT ? wish->hardness_low_n : wish->hardness_high_n;
    }
  else if (reason == BS_UNFIT_HEAVY)
    {
      quantity = BS_QUANTITY_MASS;
      value = card->slab_kg;
      limit = wish->limits.max_kg;
    }
  else if (reason == BS_UNFIT_THIN)
    {
      value = card->thickest;
      limit = wish->limits.rough_thickness;
    }
  *has = bs_units_format (value, quantity, units);
  *asked = bs_units_format (limit, quantity, units);
}

static char *
describe_reason (BsUnfit reason, const char *has, const char *asked)
{
  switch (reason)
    {
    case BS_UNFIT_SOFT:
      return g_strdup_printf (
          /* Translators: hardness of a wood, least hardness asked. */
          _ ("With a side hardness of %s it is softer than the range from %s on: it dents readily "
             "and wants flattening often."),
          has, asked);
    case BS_UNFIT_HARD:
      return g_strdup_printf (
          /* Translators: hardness of a wood, greatest hardness asked. */
          _ ("With a side hardness of %s it is harder than the range up to %s: heavy to mill and "
             "to plane, and it dents the work instead."),
          has, asked);
    case BS_UNFIT_HARDNESS_UNKNOWN:
      return g_strdup (_ ("How hard it is is not known; give a figure in your own table."));
    case BS_UNFIT_HEAVY:
      /* Translators: two masses. */
      return g_strdup_printf (_ ("The slab would weigh %s; %s was the most."), has, asked);
    case BS_UNFIT_MOVES:
      return g_strdup_printf (
          /* Translators: two lengths. */
          _ ("Its width would move by %s over the year; %s was the most."), has, asked);
    case BS_UNFIT_DEAR:
      /* Translators: two sums of money. */
      return g_strdup_printf (_ ("Its lumber would cost %s; %s was the most."), has, asked);
    case BS_UNFIT_BOND:
      return g_strdup (_ ("It bonds with difficulty: only with chosen adhesives, on freshly planed "
                          "faces."));
    case BS_UNFIT_THIN:
      return g_strdup_printf (
          /* Translators: two thicknesses. */
          _ ("It is to be had up to %s thick; %s is needed. Layers could be glued."), has, asked);
    default:
      g_return_val_if_reached (NULL);
    }
}

char **
bs_words_unfit (const BsWoodCard *card, const BsWoodWish *wish, const char *currency,
                BsUnitSystem units)
{
  GPtrArray *reasons = g_ptr_array_new ();

  for (guint i = 0; i < BS_N_UNFITS; i++)
    {
      BsUnfit reason = (BsUnfit)(1 << i);
      g_autofree char *has = NULL;
      g_autofree char *asked = NULL;

      if ((card->unfit & reason) == 0)
        continue;
      format_values (reason, card, wish, currency, units, &has, &asked);
      g_ptr_array_add (reasons, describe_reason (reason, has, asked));
    }
  g_ptr_array_add (reasons, NULL);
  return (char **)g_ptr_array_free (reasons, FALSE);
}

static const char *
name_reason (BsUnfit reason)
{
  switch (reason)
    {
    case BS_UNFIT_SOFT:
      return C_ ("why a wood does not fit", "too soft");
    case BS_UNFIT_HARD:
      return C_ ("why a wood does not fit", "too hard");
    case BS_UNFIT_HARDNESS_UNKNOWN:
      return C_ ("why a wood does not fit", "hardness not known");
    case BS_UNFIT_HEAVY:
      return C_ ("why a wood does not fit", "too heavy");
    case BS_UNFIT_MOVES:
      return C_ ("why a wood does not fit", "moves too much");
    case BS_UNFIT_DEAR:
      return C_ ("why a wood does not fit", "too dear");
    case BS_UNFIT_BOND:
      return C_ ("why a wood does not fit", "hard to glue");
    case BS_UNFIT_THIN:
      return C_ ("why a wood does not fit", "too thin");
    default:
      g_return_val_if_reached ("");
    }
}

char *
bs_words_fit (BsUnfit unfit)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < BS_N_UNFITS; i++)
    if ((unfit & (1U << i)) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "",
                              name_reason ((BsUnfit)(1U << i)));
  if (text->len == 0)
    return g_strdup (C_ ("a wood", "fits"));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char **
bs_words_wood_figures (const BsWoodCard *card)
{
  const BsWood *wood = card->wood;
  GPtrArray *sentences = g_ptr_array_new ();

  if (wood->source != NULL)
    /* Translators: a citation. */
    g_ptr_array_add (sentences, g_strdup_printf (_ ("Source: %s."), wood->source));
  if (wood->is_from_memory)
    g_ptr_array_add (sentences,
                     g_strdup (_ ("Some of its figures are from memory: check them before "
                                  "you rely on them.")));
  if (card->is_hardness_estimated)
    g_ptr_array_add (
        sentences, g_strdup (_ ("Its hardness is estimated from its density; give a figure of your "
                                "own where you have one.")));
  if (isnan (wood->moe_mpa) || isnan (wood->comp_perp_mpa))
    g_ptr_array_add (sentences,
                     g_strdup (_ ("Its stiffness or its strength across the grain is in no source "
                                  "that this table was made from: what follows from them is not "
                                  "told.")));
  if (isnan (card->movement))
    g_ptr_array_add (sentences, g_strdup (_ ("How much it moves is not in the table.")));
  g_ptr_array_add (sentences, NULL);
  return (char **)g_ptr_array_free (sentences, FALSE);
}
