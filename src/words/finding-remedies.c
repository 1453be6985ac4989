/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/words.h"

#include "core/flatten.h"
#include "core/units.h"
#include "words/finding-values.h"

#include <glib/gi18n-lib.h>

/* The labels of the laminations on which the final faces touch the rough ones: "3, A, 12". */
static char *
list_touching (const BsResults *results)
{
  GString *labels = g_string_new (NULL);
  const BsFlattenResult *flatten = &results->flatten;

  for (guint i = 0; i < flatten->n_touches; i++)
    {
      gboolean is_named = FALSE;
      for (guint j = 0; j < i; j++)
        is_named = is_named || flatten->touches[j].place == flatten->touches[i].place;
      if (!is_named)
        g_string_append_printf (
            labels, "%s%s", labels->len > 0 ? ", " : "",
            results->stack->placed[flatten->touches[i].place].lamination->label);
    }
  return g_string_free (labels, FALSE);
}

/* NULL when shims are planned already, or would not be enough. */
static char *
mend_by_shims (const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  BsFlattenResult best;

  if (plan->slab.flatten_work == BS_FLATTEN_SHIMMED)
    return NULL;
  bs_flatten_by (results->stack, BS_FLATTEN_SHIMMED, &best);
  if (!(best.thickness >= plan->slab.thickness))
    return NULL;
  g_autofree char *thickness = bs_units_format (best.thickness, BS_QUANTITY_LENGTH, plan->units);
  /* Translators: %s is a thickness. */
  return g_strdup_printf (
      _ ("Shim the slab to the best tilt before the first face is cut: then %s are left."),
      thickness);
}

static char *
mend_thickness (const BsResults *results)
{
  g_autofree char *by_shims = mend_by_shims (results);

  if (by_shims != NULL)
    return g_steal_pointer (&by_shims);
  if (results->flatten.n_touches == 0)
    return g_strdup (
        _ ("Turn over, move or replace the most crooked laminations, or mill them taller."));

  g_autofree char *labels = list_touching (results);
  return g_strdup_printf (
      /* Translators: labels of laminations, separated by commas. */
      _ ("The high and low spots that decide it are on these laminations: %s. Turn them over, move "
         "or replace "
         "them, or mill all taller."),
      labels);
}

static char *
mend_moisture (const BsFinding *finding, const FindingValues *v)
{
  if (finding->kind == BS_FINDING_MOISTURE_APART)
    return g_strdup_printf (_ ("Keep %s and %s in the same air until they agree, or part them."),
                            v->label, v->neighbour);
  return g_strdup_printf (
      _ ("Let lamination %s rest, with air all round it, where the slab will live or in a room "
         "like it, and measure again."),
      v->label);
}

static char *
mend_clamps (const BsFinding *finding, const FindingValues *v)
{
  switch (finding->kind)
    {
    case BS_FINDING_CLAMPS_MISSING:
      return g_strdup (
          _ ("Borrow or buy clamps, or line both sides with thicker cauls, which let them stand "
             "farther apart."));
    case BS_FINDING_CLAMPS_WEAK:
      return g_strdup (_ (
          "Use more or stronger clamps. With fewer, fit the faces so that they close under light "
          "pressure, and test a joint of scrap to breaking before you trust it."));
    case BS_FINDING_CLAMP_REACH:
      return g_strdup_printf (_ ("Use clamps that open %s or more, or glue narrower packs first."),
                              v->first);
    case BS_FINDING_CLAMPS_PLACED:
      return g_strdup (
          _ ("Take some off, choose another kind for them, or borrow what is missing."));
    case BS_FINDING_CLAMP_FORCED:
      return g_strdup (
          _ ("Ease it to what its maker allows, and put another clamp beside it: a clamp "
             "that is forced bends, or lets go all at once."));
    case BS_FINDING_CRUSHING:
    default:
      return g_strdup (
          _ ("Put cauls or larger pads under the heads, or share the force among more clamps."));
    }
}

static char *
mend_work (const BsFinding *finding)
{
  switch (finding->kind)
    {
    case BS_FINDING_OPEN_TIME:
      return g_strdup (_ (
          "Glue packs first and then the packs together, take a slower adhesive, get help, or work "
          "in a cooler shop that the adhesive still allows."));
    case BS_FINDING_COLD:
      return g_strdup (
          _ ("Warm the shop, the wood and the adhesive, and keep them warm until it has set."));
    case BS_FINDING_HEAVY:
    default:
      return g_strdup (
          _ ("Plan help, a trolley or a hoist before the slab has to be turned or carried."));
    }
}

char *
bs_words_finding_remedy (const BsFinding *finding, const BsResults *results)
{
  g_auto (FindingValues) v;
  bs_finding_values_init (&v, finding, results);

  switch (finding->kind)
    {
    case BS_FINDING_TOO_FEW_LAMINATIONS:
      if (results->stack->plan->laminations->len == 0)
        return g_strdup (_ ("Say at Slab what is wanted. Buying then makes the laminations for it; "
                            "those that you have already are added at Laminations."));
      return g_strdup (_ ("Bring laminations from the rack to the slab."));
    case BS_FINDING_THIN:
      return mend_thickness (results);
    case BS_FINDING_NARROW:
      return g_strdup (_ ("Add laminations or make them thicker."));
    case BS_FINDING_SHORT:
      return g_strdup (_ ("Line the ends up, use longer laminations, or make the slab shorter."));
    case BS_FINDING_PLANER_NARROW:
      return g_strdup (
          _ ("Flatten by hand or with a sled, or plane packs that fit before the final press."));
    case BS_FINDING_RUN_OUT:
      return g_strdup_printf (
          _ ("Turn lamination %s end for end, or over if its underside runs the other way."),
          v.label);
    case BS_FINDING_DEFECT_SHOWS:
      return g_strdup_printf (
          _ ("Turn lamination %s so that the defect is hidden, or change it for one from the "
             "rack."),
          v.label);
    case BS_FINDING_HEARTS_ALIKE:
      return results->stack->plan->slab.layup == BS_LAYUP_ON_EDGE
                 ? g_strdup_printf (_ ("Turn lamination %s over or end for end."), v.neighbour)
                 : g_strdup_printf (_ ("Turn lamination %s over."), v.neighbour);
    case BS_FINDING_MOISTURE_APART:
    case BS_FINDING_MOISTURE_UNFIT:
      return mend_moisture (finding, &v);
    case BS_FINDING_CLAMPS_MISSING:
    case BS_FINDING_CLAMPS_WEAK:
    case BS_FINDING_CLAMP_REACH:
    case BS_FINDING_CRUSHING:
    case BS_FINDING_CLAMPS_PLACED:
    case BS_FINDING_CLAMP_FORCED:
      return mend_clamps (finding, &v);
    case BS_FINDING_OPEN_TIME:
    case BS_FINDING_COLD:
    case BS_FINDING_HEAVY:
      return mend_work (finding);
    case BS_FINDING_WOOD_UNKNOWN:
      return g_strdup_printf (
          _ ("Choose the wood of lamination %s, and fill in the figures that its table lacks."),
          v.label);
    default:
      g_return_val_if_reached (NULL);
    }
}
