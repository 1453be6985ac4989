/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/flattening.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/flatten.h"
#include "core/units.h"

static const char *const steps[BS_N_FLATTEN_WORKS] = {
  [BS_FLATTEN_SHIMMED]
  = N_ ("Lay the slab on its underside on a flat bench and shim it, without rocking, to the tilt "
        "that keeps most of it. Cut the show face level. Turn the slab over onto it and cut the "
        "underside parallel."),
  [BS_FLATTEN_SHOW_FACE_FIRST]
  = N_ ("Lay the slab on its underside as it rests, and wedge it so that it cannot rock. Cut the "
        "show face level. Turn the slab over onto it and cut the underside parallel."),
  [BS_FLATTEN_UNDERSIDE_FIRST]
  = N_ ("Lay the slab on its show face as it rests, and wedge it so that it cannot rock. Cut the "
        "underside level. Turn the slab over onto it and cut the show face parallel."),
};

static const char *const methods[] = {
  [BS_FLATTEN_BY_HAND]
  = N_ ("By hand: take the marked high spots down first, across the grain, and "
        "check with winding sticks and a long straightedge."),
  [BS_FLATTEN_BY_SLED] = N_ ("On a sled: set the first pass by the highest spot and go down in "
                             "light passes; the rails decide what is flat."),
  [BS_FLATTEN_BY_PLANER] = N_ ("Through a planer: it makes one face parallel to the other but does "
                               "not make it flat, so the first face needs a flat carrier under it "
                               "or is made flat by other means."),
};

/* What the eye and the sled cannot tell apart, mm. */
#define SAME 0.05

/* Of the four corners; NULL when there is no slab, or it lies as it should without any. */
static char *
describe_shims (const BsResults *results)
{
  BsUnitSystem units = results->stack->plan->units;
  double shims[BS_N_CORNERS];
  char *texts[BS_N_CORNERS], *text = NULL;
  double most = 0.0;

  bs_flatten_shims (results->stack, &results->flatten, shims);
  for (int i = 0; i < BS_N_CORNERS; i++)
    {
      most = fmax (most, shims[i]);
      texts[i] = bs_units_format (shims[i], BS_QUANTITY_LENGTH, units);
    }
  if (most >= SAME)
    text = g_strdup_printf (
        /* Translators: four heights. */
        _ ("Shims: left front %s, right front %s, left back %s, right back %s."),
        texts[BS_CORNER_LEFT_FRONT], texts[BS_CORNER_RIGHT_FRONT], texts[BS_CORNER_LEFT_BACK],
        texts[BS_CORNER_RIGHT_BACK]);
  for (int i = 0; i < BS_N_CORNERS; i++)
    g_free (texts[i]);
  return text;
}

char *
bs_words_flatten_steps (const BsResults *results)
{
  const BsSlab *slab = &results->stack->plan->slab;
  g_autofree char *shims
      = slab->flatten_work == BS_FLATTEN_SHIMMED ? describe_shims (results) : NULL;

  if (shims == NULL)
    return g_strdup_printf ("%s %s", _ (steps[slab->flatten_work]),
                            _ (methods[slab->flatten_method]));
  return g_strdup_printf ("%s %s %s", _ (steps[slab->flatten_work]), shims,
                          _ (methods[slab->flatten_method]));
}

char *
bs_words_flatten_choice (const BsFlattenResult by_work[BS_N_FLATTEN_WORKS], BsUnitSystem units)
{
  double shimmed = by_work[BS_FLATTEN_SHIMMED].thickness;
  double show = by_work[BS_FLATTEN_SHOW_FACE_FIRST].thickness;
  double under = by_work[BS_FLATTEN_UNDERSIDE_FIRST].thickness;
  double lost = shimmed - fmax (show, under);
  g_autofree char *more = bs_units_format (lost, BS_QUANTITY_LENGTH, units);

  if (isnan (lost))
    return g_strdup ("");
  if (lost < SAME && fabs (show - under) < SAME)
    return g_strdup (_ ("All three come out alike: no shims are needed."));
  if (lost < SAME && show > under)
    return g_strdup (_ ("No shims are needed when the show face is cut first."));
  if (lost < SAME)
    return g_strdup (_ ("No shims are needed when the underside is cut first."));
  if (show >= under)
    /* Translators: %s is a thickness. */
    return g_strdup_printf (_ ("Shims keep %s more. Without them, cut the show face first."), more);
  /* Translators: %s is a thickness. */
  return g_strdup_printf (_ ("Shims keep %s more. Without them, cut the underside first."), more);
}

char *
bs_words_flatten_most (const BsFlattenResult *result, BsUnitSystem units)
{
  g_autofree char *top = bs_units_format (result->top_most, BS_QUANTITY_LENGTH, units);
  g_autofree char *under = bs_units_format (result->underside_most, BS_QUANTITY_LENGTH, units);

  /* Translators: most that comes off the show face and off the underside. */
  return g_strdup_printf (_ ("most off: %s above, %s below"), top, under);
}

char *
bs_words_deep_spot (const BsDeepSpot *spot, const BsStack *stack)
{
  BsUnitSystem units = stack->plan->units;
  const char *label = stack->placed[spot->place].lamination->label;
  g_autofree char *depth = bs_units_format (spot->depth, BS_QUANTITY_LENGTH, units);
  g_autofree char *x = bs_units_format (round (spot->x), BS_QUANTITY_LENGTH, units);
  g_autofree char *y = bs_units_format (round (spot->y), BS_QUANTITY_LENGTH, units);

  /* Translators: the label of a lamination, how much comes off, and two distances. */
  return g_strdup_printf (_ ("%s: %s, %s from the left end, %s from the front"),
                          label != NULL ? label : "", depth, x, y);
}

const char *
bs_words_no_deep_spot (void)
{
  return _ ("Nowhere comes more off than the allowance.");
}

char *
bs_words_sure (const BsFlattenOdds *odds, const BsPlan *plan)
{
  gboolean is_sure = odds == NULL || !(odds->wanted_pct < 95.0);
  double reached = odds == NULL ? NAN : is_sure ? odds->at_95_pct : plan->slab.thickness;
  int n = is_sure ? 95 : (int)odds->wanted_pct;
  g_autofree char *thickness = bs_units_format (reached, BS_QUANTITY_LENGTH, plan->units);

  return g_strdup_printf (
      /* Translators: so many of a hundred slabs; a thickness. */
      ngettext ("%1$d of 100 reaches %2$s", "%1$d of 100 reach %2$s", (unsigned long)n), n,
      thickness);
}

char *
bs_words_planer (const BsStack *stack)
{
  double planer = stack->plan->shop.planer_width;
  BsUnitSystem units = stack->plan->units;
  int n = bs_flatten_packs_for_planer (stack, planer);
  g_autofree char *width = bs_units_format (planer, BS_QUANTITY_LENGTH, units);

  if (stack->n == 0)
    return g_strdup (_ ("There is nothing to plane yet."));
  if (!(planer > 0.0))
    return g_strdup (_ ("There is no planer in the shop: say how wide it is under Shop, or choose "
                        "another way."));
  if (n == 0)
    /* Translators: %s is the width of the planer. */
    return g_strdup_printf (
        _ ("A lamination alone is wider than the planer, which takes %s: flatten it another way."),
        width);
  if (n == 1)
    /* Translators: %s is the width of the planer. */
    return g_strdup_printf (_ ("The slab goes through whole: the planer takes %s."), width);
  return g_strdup_printf (
      /* Translators: number of packs, width of the planer. */
      ngettext ("The planer takes %2$s, so the slab is planed in %1$d pack and joined afterwards; "
                "steps at the last joints are taken off by hand.",
                "The planer takes %2$s, so the slab is planed in %1$d packs that are joined "
                "afterwards; steps at the last joints are taken off by hand.",
                (unsigned long)n),
      n, width);
}
