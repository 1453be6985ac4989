/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/timber.h"

#include "core/money.h"
#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
name_load (const BsLoad *load, BsLoadKind kind)
{
  const char *label = load->label != NULL ? load->label : "–";

  switch (kind)
    {
    case BS_LOAD_BOARD:
      /* Translators: label of a board. */
      return g_strdup_printf (_ ("Heaviest board (%s)"), label);
    case BS_LOAD_LAMINATION:
      /* Translators: label of a lamination. */
      return g_strdup_printf (_ ("Heaviest lamination (%s)"), label);
    case BS_LOAD_PACK:
      return g_strdup (_ ("Heaviest pack"));
    case BS_LOAD_SLAB:
      return g_strdup (_ ("The slab"));
    default:
      g_return_val_if_reached (NULL);
    }
}

char *
bs_words_load (const BsLoad *load, BsLoadKind kind, BsUnitSystem units)
{
  g_autofree char *name = name_load (load, kind);
  g_autofree char *mass = bs_units_format (load->kg, BS_QUANTITY_MASS, units);
  g_autofree char *people = NULL;

  if (isnan (load->kg))
    return g_strdup_printf (
        /* Translators: what is lifted. */
        _ ("%s: what it weighs is not known."), name);
  if (load->people == 0)
    people = g_strdup (_ ("Use a lifting aid."));
  else
    people
        = g_strdup_printf (ngettext ("One person lifts it with care.",
                                     "It takes %d people, or a lifting aid.", (gulong)load->people),
                           load->people);
  /* Translators: what is lifted, its mass, and who lifts it (a sentence). */
  return g_strdup_printf (_ ("%s: %s. %s"), name, mass, people);
}

static char *
describe_volumes (const BsCost *cost, BsUnitSystem units)
{
  g_autofree char *gross = bs_units_format (cost->gross, BS_QUANTITY_VOLUME, units);
  g_autofree char *net = bs_units_format (cost->net, BS_QUANTITY_VOLUME, units);
  g_autofree char *waste = bs_units_format (cost->waste_pct, BS_QUANTITY_PERCENT, units);

  return g_strdup_printf (
      /* Translators: two volumes and a part in per cent. */
      _ ("Of %s of lumber %s end in the slab; %s are offcuts, chips and dust."), gross, net, waste);
}

static char *
describe_price (const BsCost *cost, const char *currency)
{
  g_autofree char *total = bs_money_format (cost->total_minor, currency);
  g_autofree char *wood = bs_money_format (cost->wood_minor, currency);
  g_autofree char *glue = bs_money_format (cost->glue_minor, currency);

  if (!isnan (cost->total_minor))
    return g_strdup_printf (
        /* Translators: three sums of money. */
        _ ("Wood and glue cost %s: %s for the wood, %s for the glue."), total, wood, glue);
  if (cost->n_unpriced > 0)
    return g_strdup_printf (
        ngettext ("What it costs is not known: one board or lamination has no price.",
                  "What it costs is not known: %u boards or laminations have no price.",
                  cost->n_unpriced),
        cost->n_unpriced);
  if (isnan (cost->wood_minor))
    return g_strdup (_ ("What it costs is not known: there is no wood yet."));
  return g_strdup_printf (
      /* Translators: a sum of money. */
      _ ("The wood costs %s; what the glue costs is not known."), wood);
}

static char *
describe_glue (const BsCost *cost, BsUnitSystem units)
{
  g_autofree char *area = bs_units_format (cost->glue_area, BS_QUANTITY_AREA, units);
  g_autofree char *mass = bs_units_format (cost->glue_kg, BS_QUANTITY_MASS, units);

  return g_strdup_printf (
      /* Translators: an area and a mass. */
      _ ("Its glue lines are %s in all and take %s of glue."), area, mass);
}

char **
bs_words_cost (const BsCost *cost, const char *currency, BsUnitSystem units)
{
  GPtrArray *sentences = g_ptr_array_new ();

  if (!isnan (cost->waste_pct))
    g_ptr_array_add (sentences, describe_volumes (cost, units));
  g_ptr_array_add (sentences, describe_price (cost, currency));
  if (cost->glue_area > 0.0)
    g_ptr_array_add (sentences, describe_glue (cost, units));
  g_ptr_array_add (sentences, NULL);
  return (char **)g_ptr_array_free (sentences, FALSE);
}
