/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/timber.h"

#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Slots are not worth their trouble for less, mm: common practice, no source. */
#define NO_MATTER 0.5

/* Cups that a rule shows, mm. */
#define SHOWS 0.3

static char *
describe_width (const BsMovement *movement, BsUnitSystem units)
{
  g_autofree char *year = bs_units_format (movement->width.year, BS_QUANTITY_LENGTH, units);
  g_autofree char *dry = bs_units_format (movement->dry_pct, BS_QUANTITY_PERCENT, units);
  g_autofree char *damp = bs_units_format (movement->damp_pct, BS_QUANTITY_PERCENT, units);
  g_autofree char *thickness
      = bs_units_format (movement->thickness.year, BS_QUANTITY_LENGTH, units);

  return g_strdup_printf (
      /* Translators: two lengths, then two moistures in per cent. */
      _ ("Over the year the slab grows and shrinks by %s in width and %s in thickness, as its wood "
         "comes to rest between %s and %s moisture."),
      year, thickness, dry, damp);
}

static char *
describe_fixing (const BsMovement *movement, BsUnitSystem units)
{
  g_autofree char *year = bs_units_format (movement->width.year, BS_QUANTITY_LENGTH, units);

  if (movement->width.year < NO_MATTER)
    return g_strdup (_ ("Round holes will do for fixing it."));
  return g_strdup_printf (
      /* Translators: a length. */
      _ ("Fix it firmly along one line only, in the middle or at the edge that must stay in place, "
         "and with slotted holes elsewhere. Nothing across its width may be glued or screwed fast: "
         "it would be torn by %s."),
      year);
}

static char *
describe_step (const BsMovement *movement, const BsStack *stack)
{
  g_autofree char *step = bs_units_format (movement->step, BS_QUANTITY_LENGTH, stack->plan->units);
  const BsPlaced *placed = &stack->placed[movement->step_place];

  return g_strdup_printf (
      /* Translators: labels of two neighbours, and a length. */
      _ ("Laminations %s and %s have their rings at other angles: a step of up to %s will grow "
         "between them. Laminations with like rings side by side stay level."),
      placed[0].lamination->label, placed[1].lamination->label, step);
}

static char *
describe_cup (const BsCupping *cupping, BsUnitSystem units)
{
  g_autofree char *laid = bs_units_format (cupping->as_laid.waves, BS_QUANTITY_LENGTH, units);
  g_autofree char *same = bs_units_format (cupping->same_side.waves, BS_QUANTITY_LENGTH, units);
  g_autofree char *turns = bs_units_format (cupping->alternating.waves, BS_QUANTITY_LENGTH, units);

  return g_strdup_printf (
      /* Translators: three lengths. */
      _ ("Left to itself the slab would go out of flat by %s as its hearts lie now; by %s with all "
         "hearts the same way, in one even arc that a batten can hold; by %s with hearts up and "
         "down by turns, in waves that stay."),
      laid, same, turns);
}

char **
bs_words_movement (const BsResults *results)
{
  const BsMovement *movement = &results->movement;
  const BsUnitSystem units = results->stack->plan->units;
  GPtrArray *sentences = g_ptr_array_new ();

  if (isnan (movement->width.year))
    g_ptr_array_add (sentences,
                     g_strdup (_ ("How the slab moves over the year cannot be told: it has no "
                                  "laminations yet, or a wood in it is not known.")));
  else
    {
      g_ptr_array_add (sentences, describe_width (movement, units));
      g_ptr_array_add (sentences, describe_fixing (movement, units));
    }
  if (movement->step > SHOWS)
    g_ptr_array_add (sentences, describe_step (movement, results->stack));
  if (results->cupping.is_on_flat && fabs (results->cupping.greatest_board) > 0.0)
    g_ptr_array_add (sentences, describe_cup (&results->cupping, units));
  g_ptr_array_add (sentences, NULL);
  return (char **)g_ptr_array_free (sentences, FALSE);
}

char *
bs_words_slot (const BsSlot *slot, BsUnitSystem units)
{
  g_autofree char *distance = bs_units_format (slot->distance, BS_QUANTITY_LENGTH, units);
  g_autofree char *length = bs_units_format (slot->length, BS_QUANTITY_LENGTH, units);
  g_autofree char *towards = bs_units_format (slot->towards, BS_QUANTITY_LENGTH, units);
  g_autofree char *away = bs_units_format (slot->away, BS_QUANTITY_LENGTH, units);

  return g_strdup_printf (
      /* Translators: four lengths. */
      _ ("At %s from where the slab is fixed: a slot %s long across the grain, which leaves the "
         "screw %s towards the fixed spot and %s away from it."),
      distance, length, towards, away);
}
