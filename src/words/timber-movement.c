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
bs_words_movement_formula (const BsMovement *movement, BsUnitSystem units)
{
  g_autofree char *dry = bs_units_format (movement->dry_pct, BS_QUANTITY_PERCENT, units);
  g_autofree char *damp = bs_units_format (movement->damp_pct, BS_QUANTITY_PERCENT, units);

  if (bs_movement_is_linear (movement))
    return g_strdup_printf (
        /* Translators: two moistures in per cent. */
        _ ("From %s to %s the handbook’s formula with one coefficient holds, as it does from 6 to "
           "14 %%."),
        dry, damp);
  return g_strdup_printf (
      /* Translators: two moistures in per cent. */
      _ ("The way from gluing to between %s and %s leaves the range of 6 to 14 %%, in which the "
         "handbook’s formula with one coefficient holds; beyond it its other formula counts, from "
         "the shrinkage of green wood."),
      dry, damp);
}

char *
bs_words_fixing (const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  const BsFixing *fixing = &plan->slab.fixing;
  g_autofree char *screw = bs_units_format (fixing->screw, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *play = bs_units_format (fixing->play, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *moisture
      = bs_units_format (results->movement.glued_pct, BS_QUANTITY_PERCENT, plan->units);

  switch (fixing->line)
    {
    case BS_FIXED_MIDDLE:
      return g_strdup_printf (
          /* Translators: the diameter of the screws, a length, and a moisture, here and below. */
          _ ("Held along its middle. Slots for screws of %s with %s of play at each end, driven "
             "while the wood has %s moisture:"),
          screw, play, moisture);
    case BS_FIXED_FRONT:
      return g_strdup_printf (
          _ ("Held along its front. Slots for screws of %s with %s of play at each end, driven "
             "while the wood has %s moisture:"),
          screw, play, moisture);
    case BS_FIXED_BACK:
      return g_strdup_printf (
          _ ("Held along its back. Slots for screws of %s with %s of play at each end, driven "
             "while the wood has %s moisture:"),
          screw, play, moisture);
    default:
      g_return_val_if_reached (NULL);
    }
}
