/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/words.h"

#include "core/clamp-layout.h"
#include "core/mass.h"
#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Facts and their sources: docs/models.md, Cautions. */

typedef enum
{
  HAZARD_UNKNOWN,
  HAZARD_MILD,
  HAZARD_ISOCYANATE,
  HAZARD_EPOXY,
  HAZARD_FORMALDEHYDE,
} Hazard;

/* By the rows of data/adhesives.json. */
static const struct
{
  const char *adhesive;
  Hazard hazard;
} hazards[] = {
  { "pva-d2", HAZARD_MILD },
  { "pva-aliphatic", HAZARD_MILD },
  { "pva-d3", HAZARD_MILD },
  { "pva-d4", HAZARD_ISOCYANATE }, /* its hardener may hold some */
  { "polyurethane", HAZARD_ISOCYANATE },
  { "urea", HAZARD_FORMALDEHYDE },
  { "melamine-urea", HAZARD_FORMALDEHYDE },
  { "resorcinol", HAZARD_FORMALDEHYDE },
  { "epoxy", HAZARD_EPOXY },
  { "hide-hot", HAZARD_MILD },
  { "hide-liquid", HAZARD_MILD },
  { "casein", HAZARD_MILD },
};

static Hazard
find_hazard (const BsAdhesive *adhesive)
{
  for (gsize i = 0; i < G_N_ELEMENTS (hazards); i++)
    if (g_strcmp0 (hazards[i].adhesive, adhesive->id) == 0)
      return hazards[i].hazard;
  return HAZARD_UNKNOWN;
}

static const char *
describe_hazard (Hazard hazard)
{
  switch (hazard)
    {
    case HAZARD_MILD:
      return _ ("Adhesive: keep it off skin and eyes; where it has a hardener, wear gloves.");
    case HAZARD_ISOCYANATE:
      return _ (
          "Adhesive: isocyanates in it can make skin and airways allergic for good. Wear gloves, "
          "air the room, do not sand or heat fresh glue. In the EU and UK people who use it at "
          "work must be trained first.");
    case HAZARD_EPOXY:
      return _ (
          "Adhesive: epoxy resin and its hardener can make skin allergic for good. Wear nitrile "
          "gloves, never clean skin with solvent, mix small pots: large ones get hot.");
    case HAZARD_FORMALDEHYDE:
      return _ (
          "Adhesive: it gives off formaldehyde, which can cause cancer. Air the room well, wear "
          "gloves, and keep to the limits that hold where you work.");
    case HAZARD_UNKNOWN:
    default:
      return _ (
          "Adhesive: this program does not know its dangers. Isocyanates and epoxies can make "
          "skin and airways allergic for good, some resins give off formaldehyde: read its "
          "safety data sheet before you open it.");
    }
}

/* 300 mm and 12 mm are teaching practice, from memory; the maker's figures come first. */
static char *
describe_machines (BsUnitSystem units)
{
  g_autofree char *shortest = bs_units_format (300.0, BS_QUANTITY_LENGTH, units);
  g_autofree char *thinnest = bs_units_format (12.0, BS_QUANTITY_LENGTH, units);

  return g_strdup_printf (
      _ ("Machines: do not feed pieces shorter than about %s or thinner than about %s to a jointer "
         "or "
         "planer; their makers’ own limits come first. Straighten an edge before ripping bowed or "
         "twisted stock, which can close on the blade and be thrown back. Scrape off beads of "
         "hard glue before planing."),
      shortest, thinnest);
}

static char *
describe_lifting (const BsResults *results, const BsShop *shop, BsUnitSystem units)
{
  g_autofree char *mass = bs_units_format (results->mass_kg, BS_QUANTITY_MASS, units);
  g_autofree char *most = bs_units_format (bs_mass_most_lifted (shop), BS_QUANTITY_MASS, units);

  if (isnan (results->mass_kg))
    return g_strdup (
        _ ("Lifting: the mass of the slab is not known; weigh a lamination before you count "
           "on lifting all of them."));
  return g_strdup_printf (
      /* Translators: mass of the slab; most that is lifted. */
      _ ("Lifting: the slab comes to about %s; more than %s takes help or a lifting aid, less of "
         "it when held "
         "far from the body. Long and tall pieces tip: support both ends."),
      mass, most);
}

char *
bs_words_clamp_caution (const BsResults *results)
{
  double force = 0.0;

  for (guint i = 0; i < results->set_clamps->len; i++)
    force += g_array_index (results->set_clamps, BsLayoutClamp, i).force;
  if (force <= 0.0)
    return g_strdup (_ (
        "Clamps: tightened they store their force. Keep fingers off the pads, stand the work so "
        "that it cannot tip, and let go in small turns, evenly along the slab. Never tighten one "
        "beyond what its maker states, and never with a bar on its handle."));

  g_autofree char *sum = bs_units_format (force, BS_QUANTITY_FORCE, results->stack->plan->units);

  return g_strdup_printf (
      /* Translators: a force. */
      _ ("Clamps: tightened as planned they hold %s, and store it. Keep fingers off the pads, "
         "stand the work so that it cannot tip, and let go in small turns, evenly along the slab. "
         "Never tighten one beyond what its maker states, and never with a bar on its handle."),
      sum);
}

char **
bs_words_cautions (const BsPlan *plan, const BsResults *results)
{
  GPtrArray *cautions = g_ptr_array_new ();

  g_ptr_array_add (cautions, g_strdup (describe_hazard (find_hazard (&plan->adhesive))));
  g_ptr_array_add (
      cautions,
      g_strdup (_ (
          "Dust: wood dust harms the lungs, and that of hardwoods can cause cancer. Extract it at "
          "the machine, wear a mask that fits, and do not sweep it up dry.")));
  g_ptr_array_add (cautions, describe_machines (plan->units));
  g_ptr_array_add (cautions,
                   g_strdup (_ ("Noise: wear hearing protection at planer, jointer and saw.")));
  g_ptr_array_add (cautions, bs_words_clamp_caution (results));
  g_ptr_array_add (cautions, describe_lifting (results, &plan->shop, plan->units));
  g_ptr_array_add (
      cautions,
      g_strdup (_ (
          "The makers’ data sheets, the rules that hold where you work and the advice of licensed "
          "people come before anything said here.")));
  g_ptr_array_add (cautions, NULL);
  return (char **)g_ptr_array_free (cautions, FALSE);
}
