/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/words.h"

#include "core/units.h"
#include "words/finding-values.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* One sentence a kind, with its values put in. */

static char *
explain_size (const BsFinding *finding, const FindingValues *v)
{
  switch (finding->kind)
    {
    case BS_FINDING_THIN:
      /* Translators: thickness that comes out, thickness wanted. */
      return g_strdup_printf (_ ("The slab comes out %s thick once it is flat; %s is wanted."),
                              v->first, v->second);
    case BS_FINDING_NARROW:
      /* Translators: width that comes out, width wanted. */
      return g_strdup_printf (_ ("The laminations together are %s wide; %s is wanted."), v->first,
                              v->second);
    case BS_FINDING_SHORT:
      /* Translators: length that comes out, length wanted. */
      return g_strdup_printf (
          _ ("All laminations lie beside each other for %s only; %s is wanted."), v->first,
          v->second);
    case BS_FINDING_PLANER_NARROW:
    default:
      /* Translators: width of the slab, width of the planer. */
      return g_strdup_printf (
          _ ("The slab is %s wide and shall be flattened in a planer that takes %s."), v->first,
          v->second);
    }
}

static char *
explain_lamination (const BsFinding *finding, const FindingValues *v)
{
  switch (finding->kind)
    {
    case BS_FINDING_RUN_OUT:
      return g_strdup_printf (
          _ ("On the show face lamination %s planes cleanly towards the other end than "
             "most of the slab: it will tear out when the face is planed."),
          v->label);
    case BS_FINDING_DEFECT_SHOWS:
      /* Translators: name of a defect, label of a lamination, from and to along the slab. */
      return g_strdup_printf (_ ("The %s of lamination %s shows, from %s to %s along the slab."),
                              bs_words_defect ((BsDefectKind)finding->detail), v->label, v->second,
                              v->third);
    case BS_FINDING_HEARTS_ALIKE:
      return g_strdup_printf (
          _ ("The heart sides of laminations %s and %s look the same way, so that they "
             "cup the same way; the layup asks for opposite ways."),
          v->label, v->neighbour);
    case BS_FINDING_MOISTURE_APART:
      /* Translators: two labels, difference of moisture, limit. */
      return g_strdup_printf (
          _ ("The moisture of laminations %s and %s is %s apart; more than %s strains "
             "the glue line when they even out."),
          v->label, v->neighbour, v->first, v->second);
    case BS_FINDING_MOISTURE_UNFIT:
      /* Translators: label, its moisture, least and most moisture of the place. */
      return g_strdup_printf (
          _ ("Lamination %s has %s moisture; where the slab will live wood comes to %s "
             "to %s."),
          v->label, v->first, v->second, v->third);
    case BS_FINDING_WOOD_UNKNOWN:
    default:
      return g_strdup_printf (
          _ ("Not all figures of the wood of lamination %s are known, so that pressure, "
             "crushing or mass cannot be told."),
          v->label);
    }
}

static char *
count_clamps (const BsFinding *finding, const BsResults *results)
{
  int needed = (int)finding->values[0];
  int fitting = (int)finding->values[1];

  if (isnan (results->clamps.spacing))
    return g_strdup (_ ("The shop names no clamps; a press takes two at the least."));
  return g_strdup_printf (
      /* Translators: clamps needed, always two or more; how many of those owned reach. */
      ngettext ("It takes %1$d clamps to press all of the first glue line; %2$d of those you own "
                "reaches.",
                "It takes %1$d clamps to press all of the first glue line; %2$d of those you own "
                "reach.",
                (gulong)fitting),
      needed, fitting);
}

static const char *
name_clamp (const BsFinding *finding, const BsResults *results)
{
  const GPtrArray *kinds = results->stack->plan->shop.clamps;
  const BsClampKind *kind = (guint)finding->detail < kinds->len
                                ? g_ptr_array_index (kinds, (guint)finding->detail)
                                : NULL;

  return kind != NULL && kind->name != NULL ? kind->name : "";
}

static char *
explain_placed (const BsFinding *finding, const BsResults *results, const FindingValues *v)
{
  const char *name = name_clamp (finding, results);

  if (finding->kind == BS_FINDING_CLAMPS_PLACED)
    /* Translators: numbers of clamps of a kind, and its name. */
    return g_strdup_printf (_ ("The plan places %s of the kind “%s”; the shop has %s."), v->first,
                            name, v->second);
  /* Translators: a force, the name of a kind of clamp, another force. */
  return g_strdup_printf (_ ("The plan tightens one to %s; the greatest force of “%s” is %s."),
                          v->first, name, v->second);
}

static char *
explain_clamps (const BsFinding *finding, const BsResults *results, const FindingValues *v)
{
  switch (finding->kind)
    {
    case BS_FINDING_CLAMPS_MISSING:
      return count_clamps (finding, results);
    case BS_FINDING_CLAMPS_WEAK:
      /* Translators: force needed, force of all clamps, pressure recommended, pressure reached. */
      return g_strdup_printf (
          _ ("The recommended pressure takes %s; all your clamps that reach come to %s. They "
             "press with %s on the mean; for this wood %s is the least that is recommended."),
          v->first, v->second, v->reached, v->recommended);
    case BS_FINDING_CLAMP_REACH:
      if (finding->values[1] >= finding->values[0])
        /* Translators: number of clamps, reach needed. */
        return g_strdup_printf (
            ngettext ("Slab and cauls are %2$s across; %1$d of the clamps you own opens less.",
                      "Slab and cauls are %2$s across; %1$d of the clamps you own open less.",
                      (unsigned long)finding->values[2]),
            (int)finding->values[2], v->first);
      /* Translators: reach needed, longest reach. */
      return g_strdup_printf (
          _ ("Slab and cauls are %s across; the longest clamp you own opens %s."), v->first,
          v->second);
    case BS_FINDING_CRUSHING:
    default:
      /* Translators: stress under a clamp head, strength of the wood. */
      return g_strdup_printf (
          _ ("Tightened for the force needed, a head presses the outer lamination with %s; "
             "across the grain it bears %s."),
          v->first, v->second);
    }
}

/* The third value of an open time tells which time it is: findings.c in the core. */
static char *
explain_work (const BsFinding *finding, const FindingValues *v)
{
  switch (finding->kind)
    {
    case BS_FINDING_OPEN_TIME:
      if (finding->values[2] > 0.0)
        /* Translators: time needed, time allowed. */
        return g_strdup_printf (
            _ ("A glue line lies open for %s until the next lamination is on it; the adhesive "
               "allows %s in this shop."),
            v->first, v->second);
      /* Translators: time needed, time allowed. */
      return g_strdup_printf (
          _ ("From the first glue to the last clamp takes %s; the adhesive allows %s in this "
             "shop."),
          v->first, v->second);
    case BS_FINDING_COLD:
      /* Translators: two temperatures. */
      return g_strdup_printf (_ ("The shop has %s; the adhesive needs %s at least."), v->first,
                              v->second);
    case BS_FINDING_HEAVY:
    default:
      /* Translators: mass of the slab, most that is lifted. */
      return g_strdup_printf (
          _ ("The flattened slab comes to about %s; %s is the most to lift here."), v->first,
          v->second);
    }
}

char *
bs_words_finding_reason (const BsFinding *finding, const BsResults *results)
{
  g_auto (FindingValues) v;
  bs_finding_values_init (&v, finding, results);

  switch (finding->kind)
    {
    case BS_FINDING_TOO_FEW_LAMINATIONS:
      return g_strdup (finding->values[0] > 0.0
                           ? _ ("There is only one lamination in the slab; gluing takes two.")
                           : _ ("There are no laminations in the slab."));
    case BS_FINDING_THIN:
    case BS_FINDING_NARROW:
    case BS_FINDING_SHORT:
    case BS_FINDING_PLANER_NARROW:
      return explain_size (finding, &v);
    case BS_FINDING_RUN_OUT:
    case BS_FINDING_DEFECT_SHOWS:
    case BS_FINDING_HEARTS_ALIKE:
    case BS_FINDING_MOISTURE_APART:
    case BS_FINDING_MOISTURE_UNFIT:
    case BS_FINDING_WOOD_UNKNOWN:
      return explain_lamination (finding, &v);
    case BS_FINDING_CLAMPS_MISSING:
    case BS_FINDING_CLAMPS_WEAK:
    case BS_FINDING_CLAMP_REACH:
    case BS_FINDING_CRUSHING:
      return explain_clamps (finding, results, &v);
    case BS_FINDING_CLAMPS_PLACED:
    case BS_FINDING_CLAMP_FORCED:
      return explain_placed (finding, results, &v);
    case BS_FINDING_OPEN_TIME:
    case BS_FINDING_COLD:
    case BS_FINDING_HEAVY:
      return explain_work (finding, &v);
    default:
      g_return_val_if_reached (NULL);
    }
}
