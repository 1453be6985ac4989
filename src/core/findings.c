/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/findings.h"

#include "core/mass.h"

#include <math.h>

/* When a number is worth a word, and when it is worth stopping for. Where no source is named the
 * step was chosen here. */
#define SIZE_TOLERANCE 0.05  /* mm; sizes are compared to what can be measured */
#define FORCE_TOLERANCE 1e-6 /* part of a clamp's greatest force: rounding */
#define DEFECT_CAUTION 1.0   /* severity from which a defect is more than a mark */
#define MOISTURE_CAUTION                                                                           \
  2.0 /* points between neighbours: Selbo 1975; NC State Extension; from memory */
#define MOISTURE_STOP 4.0 /* points: EN 386:2001, spread within a member; from memory */
#define EMC_ERROR 1.0     /* points by which the model of EMC may be out */
#define PRESSURE_STOP                                                                              \
  0.5 /* part of the adhesive's least pressure, below which no data sheet speaks */
#define STRENGTH_CAUTION 0.5 /* part of the strength across the grain: Rabiej and Behm 1992 */
#define TIME_CAUTION 0.85    /* part of the time allowed */

typedef struct
{
  const BsResults *results;
  const BsStack *stack;
  const BsPlan *plan;
  GArray *findings;
} Search;

static BsFinding *
add (Search *search, BsFindingKind kind, BsSeverity severity, int place, double first,
     double second)
{
  BsFinding finding = {
    .kind = kind,
    .severity = severity,
    .place = place,
    .neighbour = -1,
    .values = { first, second, 0.0 },
  };
  g_array_append_val (search->findings, finding);
  return &g_array_index (search->findings, BsFinding, search->findings->len - 1);
}

static void
check_size (Search *search, BsFindingKind kind, double value, double wanted)
{
  if (value < wanted - SIZE_TOLERANCE)
    add (search, kind, BS_SEVERITY_STOP, -1, value, wanted);
}

static void
check_sizes (Search *search)
{
  const BsSlab *slab = &search->plan->slab;

  if (search->stack->n == 0)
    return;
  check_size (search, BS_FINDING_THIN, search->results->flatten.thickness, slab->thickness);
  check_size (search, BS_FINDING_NARROW, search->stack->width, slab->width);
  check_size (search, BS_FINDING_SHORT, bs_stack_covered_length (search->stack), slab->length);
  if (slab->flatten_method == BS_FLATTEN_BY_PLANER
      && search->stack->width > search->plan->shop.planer_width)
    add (search, BS_FINDING_PLANER_NARROW, BS_SEVERITY_STOP, -1, search->stack->width,
         search->plan->shop.planer_width);
}

/* Width of the show face that planes cleanly towards the right, less that towards the left. */
static double
weigh_run_out (const BsStack *stack)
{
  double balance = 0.0;

  for (guint i = 0; i < stack->n; i++)
    balance += stack->placed[i].run_out_top * stack->placed[i].thickness;
  return balance;
}

static void
check_run_out (Search *search)
{
  int majority = weigh_run_out (search->stack) < 0.0 ? -1 : 1;

  for (guint i = 0; i < search->stack->n; i++)
    if (search->stack->placed[i].run_out_top == -majority)
      add (search, BS_FINDING_RUN_OUT, BS_SEVERITY_CAUTION, (int)i, 0.0, 0.0);
}

static gboolean
is_shown (const Search *search, guint place, BsFace face)
{
  const BsSlab *slab = &search->plan->slab;

  switch (face)
    {
    case BS_FACE_TOP:
      return TRUE;
    case BS_FACE_UNDERSIDE:
      return slab->shows_underside;
    case BS_FACE_LEFT:
      return slab->shows_front && place == 0;
    case BS_FACE_RIGHT:
      return slab->shows_back && place + 1 == search->stack->n;
    default:
      return FALSE;
    }
}

static void
check_defects (Search *search, guint place)
{
  const BsPlaced *placed = &search->stack->placed[place];
  const GArray *defects = placed->lamination->defects;

  for (guint i = 0; i < defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (defects, BsDefect, i);
      BsPlacedDefect seen = bs_placed_defect (placed, defect);
      if (!is_shown (search, place, seen.face) || defect->severity <= 0.0)
        continue;
      BsSeverity severity
          = defect->severity >= DEFECT_CAUTION ? BS_SEVERITY_CAUTION : BS_SEVERITY_NOTE;
      BsFinding *finding = add (search, BS_FINDING_DEFECT_SHOWS, severity, (int)place,
                                defect->severity, seen.x_from);
      finding->values[2] = seen.x_to;
      finding->detail = (int)defect->kind;
    }
}

static void
check_moisture (Search *search, guint place)
{
  double moisture = search->stack->placed[place].lamination->moisture_pct;
  double low = search->results->emc_low_pct;
  double high = search->results->emc_high_pct;
  double off = fmax (low - moisture, moisture - high); /* NAN when unknown: no finding */

  if (off <= EMC_ERROR || isnan (off))
    return;
  BsFinding *finding = add (search, BS_FINDING_MOISTURE_UNFIT,
                            off > MOISTURE_STOP ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION,
                            (int)place, moisture, low);
  finding->values[2] = high;
}

static void
check_neighbours (Search *search, guint place)
{
  const BsPlaced *a = &search->stack->placed[place];
  const BsPlaced *b = a + 1;
  double apart = fabs (a->lamination->moisture_pct - b->lamination->moisture_pct);

  if (apart > MOISTURE_CAUTION)
    {
      gboolean stops = apart > MOISTURE_STOP;
      add (search, BS_FINDING_MOISTURE_APART, stops ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION,
           (int)place, apart, stops ? MOISTURE_STOP : MOISTURE_CAUTION)
          ->neighbour
          = (int)place + 1;
    }
  if (search->plan->slab.alternate_hearts && a->heart_side != 0 && a->heart_side == b->heart_side)
    add (search, BS_FINDING_HEARTS_ALIKE, BS_SEVERITY_CAUTION, (int)place, 0.0, 0.0)->neighbour
        = (int)place + 1;
}

static void
check_laminations (Search *search)
{
  if (search->stack->n < 2)
    add (search, BS_FINDING_TOO_FEW_LAMINATIONS, BS_SEVERITY_STOP, -1, search->stack->n, 0.0);
  for (guint i = 0; i < search->stack->n; i++)
    {
      const BsWood *wood = search->stack->placed[i].wood;
      if (wood == NULL || isnan (wood->sg_12) || isnan (wood->comp_perp_mpa))
        add (search, BS_FINDING_WOOD_UNKNOWN, BS_SEVERITY_CAUTION, (int)i, 0.0, 0.0);
      check_defects (search, i);
      check_moisture (search, i);
      if (i + 1 < search->stack->n)
        check_neighbours (search, i);
    }
}

static void
check_reach (Search *search)
{
  const BsClampRule *rule = &search->results->clamps;
  const GPtrArray *clamps = search->plan->shop.clamps;
  double longest = 0.0;
  int too_short = 0;

  for (guint i = 0; i < clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (clamps, i);
      if (kind->count == 0)
        continue;
      longest = fmax (longest, kind->reach);
      too_short += kind->reach < rule->reach_needed ? kind->count : 0;
    }
  if (too_short > 0 && rule->n_fitting < rule->n)
    add (search, BS_FINDING_CLAMP_REACH,
         rule->n_fitting == 0 ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION, -1, rule->reach_needed,
         longest)
        ->values[2]
        = too_short;
}

static void
check_clamps (Search *search)
{
  const BsClampRule *rule = &search->results->clamps;
  int covering = MAX (rule->n_by_spacing, 2);

  if (search->stack->n < 2)
    return;
  check_reach (search);
  if (rule->n_fitting < covering)
    add (search, BS_FINDING_CLAMPS_MISSING, BS_SEVERITY_STOP, -1, covering, rule->n_fitting);
  if (rule->n_fitting > 0 && rule->force_fitting_n < rule->force_n)
    {
      double least = PRESSURE_STOP * search->plan->adhesive.min_pressure_mpa;
      add (search, BS_FINDING_CLAMPS_WEAK,
           rule->reached_mpa < least ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION, -1, rule->force_n,
           rule->force_fitting_n);
    }

  double strength = rule->head_strength_mpa;
  if (rule->head_stress_mpa > STRENGTH_CAUTION * strength)
    add (search, BS_FINDING_CRUSHING,
         rule->head_stress_mpa > strength ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION, -1,
         rule->head_stress_mpa, strength);
}

/* Placed clamps against what the shop has of each kind. */
static void
check_placed_clamps (Search *search)
{
  const GArray *placed = search->plan->placed_clamps;
  const GPtrArray *kinds = search->plan->shop.clamps;

  for (guint i = 0; placed->len > 0 && i < kinds->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (kinds, i);
      double most = 0.0;
      int count = 0;

      for (guint j = 0; j < placed->len; j++)
        {
          const BsPlacedClamp *clamp = &g_array_index (placed, BsPlacedClamp, j);

          if (!g_str_equal (clamp->kind, kind->id))
            continue;
          count++;
          most = fmax (most, clamp->force_n);
        }
      if (count > kind->count)
        add (search, BS_FINDING_CLAMPS_PLACED, BS_SEVERITY_STOP, -1, count, kind->count)->detail
            = (int)i;
      if (most > kind->max_force_n * (1.0 + FORCE_TOLERANCE))
        add (search, BS_FINDING_CLAMP_FORCED, BS_SEVERITY_STOP, -1, most, kind->max_force_n)->detail
            = (int)i;
    }
}

/* Says whether it is the whole time or the open part alone: the third value is 0 or 1. */
static void
check_time (Search *search, double needed, double limit, gboolean is_open_part)
{
  if (needed > TIME_CAUTION * limit)
    add (search, BS_FINDING_OPEN_TIME, needed > limit ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION, -1,
         needed, limit)
        ->values[2]
        = is_open_part;
}

static void
check_gluing (Search *search)
{
  const BsAssembly *assembly = &search->results->assembly;
  double temperature = search->plan->shop.climate.temperature_c;
  double least = search->plan->adhesive.min_temperature_c;

  check_time (search, assembly->total_s, assembly->limit_s, FALSE);
  check_time (search, assembly->open_s, assembly->open_limit_s, TRUE);
  if (temperature < least)
    add (search, BS_FINDING_COLD, BS_SEVERITY_STOP, -1, temperature, least);
}

static void
check_mass (Search *search)
{
  double most = bs_mass_most_lifted (&search->plan->shop);

  if (search->results->mass_kg > most)
    add (search, BS_FINDING_HEAVY, BS_SEVERITY_CAUTION, -1, search->results->mass_kg, most);
}

static int
compare_findings (gconstpointer a, gconstpointer b)
{
  const BsFinding *first = a;
  const BsFinding *second = b;

  if (first->severity != second->severity)
    return (int)second->severity - (int)first->severity;
  if (first->place != second->place)
    return first->place - second->place;
  return (int)first->kind - (int)second->kind;
}

GArray *
bs_findings_new (const BsResults *results)
{
  Search search = {
    .results = results,
    .stack = results->stack,
    .plan = results->stack->plan,
    .findings = g_array_new (FALSE, TRUE, sizeof (BsFinding)),
  };

  check_sizes (&search);
  check_laminations (&search);
  check_run_out (&search);
  check_clamps (&search);
  check_placed_clamps (&search);
  check_gluing (&search);
  check_mass (&search);
  g_array_sort (search.findings, compare_findings);
  return search.findings;
}
