/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/pressing.h"

#include "core/units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The figures that the sentences put in. */
typedef struct
{
  char *least, *greatest, *wanted, *strength, *possible, *below;
} Figures;

static void
figures_init (Figures *self, const BsPressure *pressure, const BsLayout *layout)
{
  const BsPlan *plan = pressure->stack->plan;
  const BsLayoutProblem *problem = &pressure->press.problem;
  BsUnitSystem units = plan->units;
  double strength = isinf (problem->most_mpa) ? NAN : problem->most_mpa;

  *self = (Figures){
    .least = bs_units_format (layout->least_mpa, BS_QUANTITY_PRESSURE, units),
    .greatest = bs_units_format (layout->greatest_mpa, BS_QUANTITY_PRESSURE, units),
    .wanted = bs_units_format (plan->adhesive.min_pressure_mpa, BS_QUANTITY_PRESSURE, units),
    .strength = bs_units_format (strength, BS_QUANTITY_PRESSURE, units),
    .possible = bs_units_format (layout->mean_possible_mpa, BS_QUANTITY_PRESSURE, units),
    .below = bs_units_format (round (pressure->below_length), BS_QUANTITY_LENGTH, units),
  };
}

static void
figures_clear (Figures *self)
{
  g_free (self->least);
  g_free (self->greatest);
  g_free (self->wanted);
  g_free (self->strength);
  g_free (self->possible);
  g_free (self->below);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Figures, figures_clear)

/* What all clamps together could do: often less than the data sheet asks for. */
static char *
describe_possible (const BsLayout *layout, double wanted, const Figures *f)
{
  if (layout->mean_possible_mpa < wanted)
    /* Translators: a pressure that is reached, and the one that is wanted. */
    return g_strdup_printf (
        _ ("Even with every clamp that reaches at its most the mean is %s: the %s that the data "
           "sheet asks for is out of reach of these clamps."),
        f->possible, f->wanted);
  /* Translators: a pressure. */
  return g_strdup_printf (_ ("With every clamp that reaches at its most the mean would be %s."),
                          f->possible);
}

static char *
describe_short (const BsPressure *pressure, const Figures *f)
{
  g_autofree char *possible
      = describe_possible (&pressure->layout, pressure->press.problem.least_mpa, f);

  /* Translators: a pressure that is reached, the one that is wanted, a length, a whole sentence. */
  return g_strdup_printf (_ ("Too little: the weakest spot gets %s where the adhesive asks for %s; "
                             "%s of all glue lines "
                             "together are pressed less than that. %s"),
                          f->least, f->wanted, f->below, possible);
}

static char *
describe_crushing (const BsPressure *pressure, const Figures *f)
{
  g_autofree char *head = bs_units_format (pressure->head_stress_mpa, BS_QUANTITY_PRESSURE,
                                           pressure->stack->plan->units);

  if (pressure->layout.greatest_mpa > pressure->press.problem.most_mpa)
    /* Translators: a pressure that is reached, and what the wood bears. */
    return g_strdup_printf (
        _ ("Too hard: the hardest spot gets %s where the wood bears %s across the "
           "grain. Use thicker cauls, or more clamps tightened less."),
        f->greatest, f->strength);
  /* Translators: a pressure under a clamp's head, and what the wood bears. */
  return g_strdup_printf (
      _ ("Too hard: a clamp’s head presses with %s where the wood bears %s across "
         "the grain. Put cauls or larger pads under the heads."),
      head, f->strength);
}

static char *
judge_set (const BsPressure *pressure)
{
  g_auto (Figures) f;

  figures_init (&f, pressure, &pressure->layout);
  if (pressure->layout.status == BS_LAYOUT_SHORT)
    return describe_short (pressure, &f);
  if (pressure->layout.status == BS_LAYOUT_CRUSHES)
    return describe_crushing (pressure, &f);
  /* Translators: the least and the greatest pressure, the one that is wanted, what the wood bears.
   */
  return g_strdup_printf (
      _ ("Enough everywhere: from %s to %s, where the adhesive asks for %s and the "
         "wood bears %s across the grain."),
      f.least, f.greatest, f.wanted, f.strength);
}

/* The hand rule may ask for more clamps than there are. */
static char *
describe_set (const BsPressure *pressure)
{
  const BsLayout *layout = &pressure->layout;
  g_autofree char *verdict = judge_set (pressure);

  if (pressure->stack->plan->placed_clamps->len > 0 || layout->n_clamps <= layout->n_reaching)
    return g_steal_pointer (&verdict);
  /* Translators: how many clamps the hand rule asks for, how many there are, a whole sentence. */
  return g_strdup_printf (
      _ ("The hand rule’s %u clamps are shown, and %u of yours reach: this holds "
         "only with the others borrowed. %s"),
      layout->n_clamps, layout->n_reaching, verdict);
}

char *
bs_words_pressing (const BsPressure *pressure)
{
  switch (pressure->state)
    {
    case BS_PRESSURE_OF_SET_CLAMPS:
      return describe_set (pressure);
    case BS_PRESSURE_NO_STACK:
    case BS_PRESSURE_OFF_WORK:
      return g_strdup (pressure->reason);
    case BS_PRESSURE_NO_CLAMPS:
      return g_strdup (_ ("The shop has no clamps yet: add the kinds that you own or can borrow at "
                          "the place “Shop”."));
    case BS_PRESSURE_TOO_SHORT:
      {
        g_autofree char *reach = bs_units_format (pressure->press.problem.reach_needed,
                                                  BS_QUANTITY_LENGTH, pressure->stack->plan->units);

        /* Translators: a length. */
        return g_strdup_printf (
            _ ("Slab and cauls are %s across, and a clamp that is set does not "
               "reach so far. Choose longer ones, or glue narrower packs first."),
            reach);
      }
    case BS_PRESSURE_NOT_SETTLED:
    default:
      return g_strdup (_ ("The pressures could not be worked out for these clamps; move or tighten "
                          "one a little."));
    }
}

char *
bs_words_closing (const BsClampAdvice *advice)
{
  BsUnitSystem units = advice->pressure->stack->plan->units;
  g_autofree char *force = NULL;
  g_autofree char *gap = bs_units_format (BS_CLAMP_ADVICE_GAP, BS_QUANTITY_LENGTH, units);

  if (isnan (advice->closing_force) || advice->closing_force <= 0.0)
    return NULL;
  if (isinf (advice->closing_force))
    /* Translators: a small length. */
    return g_strdup_printf (_ ("Bow: gaps wider than %s are left even if the clamps were tightened "
                               "sixteen times as hard. Straighten the laminations first."),
                            gap);
  force = bs_units_format (advice->closing_force, BS_QUANTITY_FORCE, units);
  /* Translators: a force, a small length. */
  return g_strdup_printf (
      _ ("Bow: %s of the clamps’ force goes into closing it, until no gap is wider "
         "than %s."),
      force, gap);
}

char *
bs_words_clamp_trial (const BsClampAdvice *advice, const BsClampTrial *trial)
{
  const BsPlan *plan = advice->pressure->stack->plan;
  const BsClampChange *change = &trial->change;
  g_autofree char *place = bs_units_format (change->x, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *force = bs_units_format (change->force, BS_QUANTITY_FORCE, plan->units);

  switch (change->kind)
    {
    case BS_CLAMP_CHANGE_TIGHTEN:
      /* Translators: number of a clamp from the left, a force. */
      return g_strdup_printf (_ ("Tighten clamp %u to %s"), change->clamp + 1, force);
    case BS_CLAMP_CHANGE_MOVE:
      /* Translators: number of a clamp from the left, a length. */
      return g_strdup_printf (_ ("Move clamp %u to %s"), change->clamp + 1, place);
    case BS_CLAMP_CHANGE_ADD:
    default:
      /* Translators: a length, a force. */
      return g_strdup_printf (_ ("One more clamp at %s with %s"), place, force);
    }
}

char *
bs_words_clamp_trial_effect (const BsClampAdvice *advice, const BsClampTrial *trial)
{
  const BsPressure *pressure = advice->pressure;
  BsUnitSystem units = pressure->stack->plan->units;
  const BsClampChange *change = &trial->change;
  g_autofree char *before
      = bs_units_format (pressure->layout.least_mpa, BS_QUANTITY_PRESSURE, units);
  g_autofree char *after = bs_units_format (change->least_mpa, BS_QUANTITY_PRESSURE, units);
  g_autofree char *was
      = bs_units_format (round (pressure->below_length), BS_QUANTITY_LENGTH, units);
  g_autofree char *is
      = bs_units_format (round (change->less_than_wanted), BS_QUANTITY_LENGTH, units);

  if (g_str_equal (before, after))
    /* Translators: two lengths. */
    return g_strdup_printf (_ ("what is pressed too little goes from %s to %s"), was, is);
  if (pressure->below_length <= 0.0)
    /* Translators: two pressures. */
    return g_strdup_printf (_ ("the weakest spot goes from %s to %s"), before, after);
  /* Translators: two pressures, two lengths. */
  return g_strdup_printf (
      _ ("the weakest spot goes from %s to %s; what is pressed too little from %s to %s"), before,
      after, was, is);
}

/* "9 clamps with 48 kN in all". */
static char *
count_clamps (const BsLayout *layout, BsUnitSystem units)
{
  g_autofree char *force
      = bs_units_format (bs_layout_sum_forces (layout), BS_QUANTITY_FORCE, units);

  /* Translators: number of clamps, a force. */
  return g_strdup_printf (
      ngettext ("%u clamp with %s in all", "%u clamps with %s in all", layout->n_clamps),
      layout->n_clamps, force);
}

char *
bs_words_clamp_proposal (const BsClampProposal *proposal)
{
  const BsLayout *found = &proposal->found;
  double wanted = proposal->present->press.problem.least_mpa;
  g_auto (Figures) f;
  g_autofree char *clamps = count_clamps (found, proposal->present->stack->plan->units);
  g_autofree char *possible = NULL;

  figures_init (&f, proposal->present, found);
  possible = describe_possible (found, wanted, &f);
  switch (found->status)
    {
    case BS_LAYOUT_REACHED:
      /* Translators: "9 clamps with 48 kN in all"; three pressures. */
      return g_strdup_printf (
          _ ("%s press every spot enough: from %s to %s, where the adhesive asks "
             "for %s."),
          clamps, f.least, f.greatest, f.wanted);
    case BS_LAYOUT_SHORT:
      /* Translators: "9 clamps with 48 kN in all"; two pressures; a whole sentence. */
      return g_strdup_printf (
          _ ("The best that your clamps can do is too little: %s; the weakest spot "
             "gets %s where the adhesive asks for %s. %s"),
          clamps, f.least, f.wanted, possible);
    case BS_LAYOUT_CRUSHES:
      /* Translators: "9 clamps with 48 kN in all"; two pressures. */
      return g_strdup_printf (
          _ ("%s press every spot enough, but the hardest gets %s where the wood "
             "bears %s across the grain. Use thicker cauls."),
          clamps, f.greatest, f.strength);
    case BS_LAYOUT_NO_CLAMPS:
    case BS_LAYOUT_STOPPED:
    default:
      return g_strdup (
          _ ("Fewer than two of the clamps owned reach across the slab and its cauls."));
    }
}

char *
bs_words_clamp_difference (const BsClampProposal *proposal)
{
  const BsPressure *rule = proposal->rule;
  BsUnitSystem units = rule->stack->plan->units;
  g_autofree char *part = NULL;

  if (rule->state != BS_PRESSURE_OF_SET_CLAMPS || proposal->found.n_clamps == 0)
    return NULL;
  part = bs_units_format (round (100.0 * rule->layout.least_mpa / rule->layout.mean_mpa),
                          BS_QUANTITY_PERCENT, units);
  /* Translators: a percentage. */
  return g_strdup_printf (
      _ ("The hand rule shares out the force that the wood’s mean pressure takes, and lets it "
         "spread "
         "evenly within 45 degrees. Here every spot counts: the stiffness of each lamination and "
         "caul, "
         "bow and butt joints decide how far the force spreads. By the rule the weakest spot gets "
         "%s of "
         "the mean, not all of it; to lift that spot to what the adhesive asks for takes force, or "
         "clamps where it is weak."),
      part);
}

char *
bs_words_clamp (const BsResults *results, guint clamp)
{
  const BsLayoutClamp *at = &g_array_index (results->set_clamps, BsLayoutClamp, clamp);
  BsUnitSystem units = results->stack->plan->units;
  g_autofree char *place = bs_units_format (at->x, BS_QUANTITY_LENGTH, units);
  g_autofree char *force = bs_units_format (at->force, BS_QUANTITY_FORCE, units);

  if (at->is_above)
    /* Translators: numbers of a clamp and of all; a length; a force; place in an order. */
    return g_strdup_printf (_ ("Clamp %u of %u: at %s, %s, above, turn %u"), clamp + 1,
                            results->set_clamps->len, place, force, at->turn + 1);
  /* Translators: numbers of a clamp and of all; a length; a force; place in an order. */
  return g_strdup_printf (_ ("Clamp %u of %u: at %s, %s, below, turn %u"), clamp + 1,
                          results->set_clamps->len, place, force, at->turn + 1);
}
