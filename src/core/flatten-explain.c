/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/flatten-explain.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/flatten-map.h"
#include "core/flatten.h"

#define SET_BY_YOU N_ ("set by you")

const char *const bs_flatten_work_names[BS_N_FLATTEN_WORKS + 1] = {
  [BS_FLATTEN_SHIMMED] = N_ ("Shimmed to the best tilt"),
  [BS_FLATTEN_SHOW_FACE_FIRST] = N_ ("As it rests, show face first"),
  [BS_FLATTEN_UNDERSIDE_FIRST] = N_ ("As it rests, underside first"),
};

static const char *const explanations[BS_N_FLATTEN_WORKS] = {
  [BS_FLATTEN_SHIMMED]
  = N_ ("The largest slab that fits between the show face and the underside as they are built up, "
        "for the laminations as measured, in this order and these orientations. Before the first "
        "face is cut the slab is shimmed to the tilt that keeps most of it. Slips in lining the "
        "laminations up come off it and are not counted."),
  [BS_FLATTEN_SHOW_FACE_FIRST]
  = N_ ("The slab lies on its underside as it rests, without shims, while the show face is cut; "
        "turned over, the underside is cut parallel to it. At that tilt this is the largest slab "
        "that fits between both faces as they are built up, for the laminations as measured. Slips "
        "in lining the laminations up come off it and are not counted."),
  [BS_FLATTEN_UNDERSIDE_FIRST]
  = N_ ("The slab lies on its show face as it rests, without shims, while the underside is cut; "
        "turned over, the show face is cut parallel to it. At that tilt this is the largest slab "
        "that fits between both faces as they are built up, for the laminations as measured. Slips "
        "in lining the laminations up come off it and are not counted."),
};

static const char *
tell_missing (const BsStack *stack)
{
  return stack->n == 0 ? N_ ("There are no laminations in the slab yet.")
                       : N_ ("A lamination in the slab has no size yet.");
}

static double
find_least_height (const BsStack *stack)
{
  double least = INFINITY;

  for (guint i = 0; i < stack->n; i++)
    least = fmin (least, fmin (stack->placed[i].height_left, stack->placed[i].height_right));
  return least;
}

static void
add_best_tilt (const BsFlattenResult *result, const BsStack *stack, BsWorking *why)
{
  BsFlattenResult best;

  bs_flatten_by (stack, BS_FLATTEN_SHIMMED, &best);
  bs_working_add (why, N_ ("of that, what shims to the best tilt would keep"), "",
                  fmax (0.0, best.thickness - result->thickness), BS_QUANTITY_LENGTH, NULL);
}

void
bs_flatten_explain (const BsFlattenResult *result, BsFlattenWork work, const BsStack *stack,
                    BsWorking *why)
{
  const BsSlab *slab = &stack->plan->slab;
  double thickness = result->thickness;

  if (isnan (thickness))
    {
      bs_working_init (why, N_ ("Thickness after flattening"), tell_missing (stack),
                       "t = h − v − 2 a", BS_QUANTITY_LENGTH, N_ ("Nothing to go by."));
      return;
    }
  bs_working_init (why, N_ ("Thickness after flattening"), explanations[work], "t = h − v − 2 a",
                   BS_QUANTITY_LENGTH,
                   N_ ("Errors of measuring and slips in the press mostly take from it and seldom "
                       "add to it: what 50, 90 and 95 of 100 slabs reach tells how sure it is."));
  why->value = thickness;

  double least = find_least_height (stack);
  bs_working_add (why, N_ ("least height of a lamination"), "h", least, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("lost to crook, taper, twist and steps between neighbours"), "v",
                  fmax (0.0, least - thickness - 2.0 * slab->allowance), BS_QUANTITY_LENGTH, NULL);
  if (work != BS_FLATTEN_SHIMMED)
    add_best_tilt (result, stack, why);
  bs_working_add (why, N_ ("allowance for tool marks on each face"), "a", slab->allowance,
                  BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("thickness wanted"), "", slab->thickness, BS_QUANTITY_LENGTH,
                  SET_BY_YOU);
  bs_working_add (why, N_ ("most that comes off the show face, allowance included"), "",
                  result->top_most, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("most that comes off the underside, allowance included"), "",
                  result->underside_most, BS_QUANTITY_LENGTH, NULL);
}

/* Why nothing can be told of slabs that are drawn. */
static const char *
tell_unknown (const BsStack *stack, gboolean is_working)
{
  return is_working ? N_ ("It is being worked out.") : tell_missing (stack);
}

/* What all that is drawn from chance rests on. */
static void
add_deviations (const BsStack *stack, BsWorking *why)
{
  const BsUncertainty *deviation = &stack->plan->slab.uncertainty;

  bs_working_add (why, N_ ("deviation of a measured height"), "", deviation->height,
                  BS_QUANTITY_FINE_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("deviation of a measured warp"), "", deviation->warp,
                  BS_QUANTITY_FINE_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("deviation of a lamination up or down in the press"), "",
                  deviation->offset, BS_QUANTITY_FINE_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("deviation of its right end against its left one"), "", deviation->rock,
                  BS_QUANTITY_FINE_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("slabs drawn"), "", bs_flatten_spread_of (stack->plan).n_draws,
                  BS_QUANTITY_COUNT, N_ ("chosen here"));
}

#define DRAWN_CERTAINTY                                                                            \
  N_ ("As sure as the four deviations: measure the same lamination several times to find yours. "  \
      "The drawing itself adds about a twentieth of the thickness’s own deviation.")

static const struct
{
  const char *title;
  double quantile;
} sures[BS_N_SURE] = {
  [BS_SURE_50_PCT] = { N_ ("Thickness that 50 of 100 slabs reach"), 0.50 },
  [BS_SURE_90_PCT] = { N_ ("Thickness that 90 of 100 slabs reach"), 0.10 },
  [BS_SURE_95_PCT] = { N_ ("Thickness that 95 of 100 slabs reach"), 0.05 },
};

double
bs_flatten_odds_get (const BsFlattenOdds *odds, BsSure sure)
{
  const double values[] = { odds->at_50_pct, odds->at_90_pct, odds->at_95_pct };

  return values[sure];
}

void
bs_flatten_explain_odds (const BsFlattenOdds *odds, BsSure sure, const BsStack *stack,
                         BsWorking *why)
{
  double value = odds != NULL ? bs_flatten_odds_get (odds, sure) : NAN;

  bs_working_init (
      why, sures[sure].title,
      isnan (value) ? tell_unknown (stack, odds == NULL)
                    : N_ ("Heights, warp and the places of the laminations in the press are "
                          "drawn from normal distributions about what was measured, and each "
                          "such slab is flattened by the order of work. The thickness is the "
                          "one below which the rest of the slabs come out."),
      "", BS_QUANTITY_LENGTH, isnan (value) ? N_ ("Nothing to go by.") : DRAWN_CERTAINTY);
  if (odds == NULL || isnan (value))
    return;
  why->value = value;
  bs_working_add (why, N_ ("thinnest slab drawn"), "", odds->least, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("thickest slab drawn"), "", odds->most, BS_QUANTITY_LENGTH, NULL);
  add_deviations (stack, why);
}

void
bs_flatten_explain_wanted (const BsFlattenOdds *odds, const BsStack *stack, BsWorking *why)
{
  gboolean is_known = odds != NULL && !isnan (odds->wanted_pct);

  bs_working_init (why, N_ ("Chance of the thickness that is wanted"),
                   is_known ? N_ ("The share of the slabs drawn that come out at least as thick as "
                                  "wanted.")
                            : tell_unknown (stack, odds == NULL),
                   "", BS_QUANTITY_PERCENT, is_known ? DRAWN_CERTAINTY : N_ ("Nothing to go by."));
  if (!is_known)
    return;
  why->value = odds->wanted_pct;
  bs_working_add (why, N_ ("thickness wanted"), "", stack->plan->slab.thickness, BS_QUANTITY_LENGTH,
                  SET_BY_YOU);
  add_deviations (stack, why);
}

void
bs_flatten_explain_height (const double *height, const BsStack *stack, BsWorking *why)
{
  gboolean is_known = height != NULL && !isnan (*height);
  double wanted = stack->plan->slab.thickness;

  bs_working_init (
      why, N_ ("Mill all laminations to"),
      is_known ? N_ ("The one height of all laminations, warped as they are, at which 95 of 100 "
                     "slabs come out at least as thick as wanted. A millimetre more on every "
                     "lamination is a millimetre more of slab.")
               : tell_unknown (stack, height == NULL),
      "H = t + e", BS_QUANTITY_LENGTH, is_known ? DRAWN_CERTAINTY : N_ ("Nothing to go by."));
  if (!is_known)
    return;
  why->value = *height;
  bs_working_add (why, N_ ("thickness wanted"), "t", wanted, BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("lost in no more than 5 of 100 slabs, allowances included"), "e",
                  *height - wanted, BS_QUANTITY_LENGTH, NULL);
  add_deviations (stack, why);
}

void
bs_flatten_explain_packs (const BsStack *stack, BsWorking *why)
{
  double planer = stack->plan->shop.planer_width;
  int n = bs_flatten_packs_for_planer (stack, planer);

  bs_working_init (
      why, N_ ("Packs for the planer"),
      n > 0 ? N_ ("Neighbours are taken into a pack as long as it is no wider than the planer; no "
                  "other way needs fewer. Each pack goes through alone, and what the joints "
                  "between them step afterwards is taken off by hand. The thickness counts the "
                  "slab as flattened whole.")
      : stack->n == 0 ? N_ ("There are no laminations in the slab yet.")
      : planer > 0.0  ? N_ ("A lamination alone is wider than the planer.")
                      : N_ ("There is no planer in the shop."),
      "", BS_QUANTITY_COUNT, n > 0 ? N_ ("Exact.") : N_ ("Nothing to go by."));
  if (n == 0)
    return;
  why->value = n;
  bs_working_add (why, N_ ("width of the slab as built"), "", stack->width, BS_QUANTITY_LENGTH,
                  NULL);
  bs_working_add (why, N_ ("planer width"), "", planer, BS_QUANTITY_LENGTH, SET_BY_YOU);
}
