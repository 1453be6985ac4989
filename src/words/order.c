/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/order.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/order-moves.h"
#include "core/units.h"
#include "words/words.h"

const char *const bs_words_wishes[] = {
  [BS_ORDER_WISH_OFF] = NC_ ("how much something matters", "does not matter"),
  [BS_ORDER_WISH_LITTLE] = NC_ ("how much something matters", "matters a little"),
  [BS_ORDER_WISH_NORMAL] = NC_ ("how much something matters", "matters"),
  [BS_ORDER_WISH_MUCH] = NC_ ("how much something matters", "matters much"),
  [BS_N_ORDER_WISHES] = NULL,
};

static const char *
get_label (const BsPlan *plan, const char *id)
{
  const BsLamination *lamination = bs_plan_find_lamination (plan, id);

  return lamination != NULL && lamination->label != NULL ? lamination->label : id;
}

char *
bs_words_pin (const BsPin *pin, const BsPlan *plan)
{
  const char *label = get_label (plan, pin->lamination);

  switch (pin->kind)
    {
    case BS_PIN_PLACE:
      /* Translators: a pin: the label of a lamination and its place in the order. */
      return g_strdup_printf (_ ("%s at place %d"), label, pin->place + 1);
    case BS_PIN_NEIGHBOURS:
      /* Translators: a pin: the labels of two laminations. */
      return g_strdup_printf (_ ("%s beside %s"), label, get_label (plan, pin->other));
    case BS_PIN_TOP_UP:
      /* Translators: a pin: the label of a lamination; the top is its edge as marked. */
      return g_strdup_printf (_ ("%s with its top up"), label);
    case BS_PIN_UNDERSIDE_UP:
      /* Translators: a pin: the label of a lamination; the underside is its edge as marked. */
      return g_strdup_printf (_ ("%s with its underside up"), label);
    default:
      g_return_val_if_reached (g_strdup (label));
    }
}

char *
bs_words_order_points (gint32 cost)
{
  return bs_units_format (cost / (double)BS_ORDER_POINT, BS_QUANTITY_RATIO, BS_UNIT_SYSTEM_METRIC);
}

char *
bs_words_order_quality (gint32 cost, gint32 bound)
{
  double gap_pct = 100.0 * (cost - bound) / (double)MAX (cost, 1);

  if (bound >= cost)
    return g_strdup (_ ("Proved: no order is better."));
  if (bound <= 0)
    return g_strdup (_ ("How much better an order can be is not known yet."));
  /* Rounded up, so that it is still true. */
  g_autofree char *gap
      = bs_units_format (ceil (10.0 * gap_pct) / 10.0, BS_QUANTITY_PERCENT, BS_UNIT_SYSTEM_METRIC);
  /* Translators: "0.7 %". */
  return g_strdup_printf (_ ("No order can be more than %s better."), gap);
}

static const char *
get_candidate (const BsOrderProblem *problem, guint i)
{
  const BsOrderCandidate *candidate = &g_array_index (problem->candidates, BsOrderCandidate, i);

  return candidate->label != NULL ? candidate->label : candidate->id;
}

/* A change that costs nothing: another order is as good. */
static char *
describe_free_change (const BsOrderProblem *problem, const BsOrderChange *change, const char *label)
{
  switch (change->kind)
    {
    case BS_ORDER_CHANGE_MOVE:
      /* Translators: the label of a lamination, and a place in the order. */
      return g_strdup_printf (_ ("%s could as well go to place %u."), label, change->place + 1);
    case BS_ORDER_CHANGE_TURN:
      /* Translators: the label of a lamination, and how it lies: "turned over". */
      return g_strdup_printf (_ ("%s could as well lie otherwise: %s."), label,
                              bs_words_orientation (change->orientation));
    default:
      /* Translators: the labels of two laminations. */
      return g_strdup_printf (_ ("%s could as well be exchanged for %s."), label,
                              get_candidate (problem, change->candidate));
    }
}

char *
bs_words_order_change (const BsOrderProblem *problem, const BsOrderResult *result, guint place)
{
  g_return_val_if_fail (result->changes != NULL && place < result->n_places, NULL);

  const BsOrderChange *change = &result->changes[place];
  const char *label = get_candidate (problem, result->places[place].candidate);
  g_autofree char *extra = bs_words_order_points (change->extra);

  if (change->kind == BS_ORDER_CHANGE_NONE)
    /* Translators: the label of a lamination. */
    return g_strdup_printf (_ ("%s stays as it is because of its pins."), label);
  if (change->extra <= 0)
    return describe_free_change (problem, change, label);
  switch (change->kind)
    {
    case BS_ORDER_CHANGE_MOVE:
      /* Translators: the label of a lamination, its place, another place, points: "3.5". */
      return g_strdup_printf (_ ("%s stands at place %u because anything else costs more; the "
                                 "least harmful change is to place %u, which costs %s more."),
                              label, place + 1, change->place + 1, extra);
    case BS_ORDER_CHANGE_TURN:
      /* Translators: the label of a lamination, its place, how it could lie: "turned over", and
       * points: "3.5". */
      return g_strdup_printf (_ ("%s stands at place %u because anything else costs more; the "
                                 "least harmful change is to lay it otherwise (%s), which costs "
                                 "%s more."),
                              label, place + 1, bs_words_orientation (change->orientation), extra);
    default:
      /* Translators: the label of a lamination, its place, the label of another one, points:
       * "3.5". */
      return g_strdup_printf (_ ("%s stands at place %u because anything else costs more; the "
                                 "least harmful change is to exchange it for %s, which costs %s "
                                 "more."),
                              label, place + 1, get_candidate (problem, change->candidate), extra);
    }
}

static void
append_sentence (GString *text, char *sentence)
{
  g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", sentence);
  g_free (sentence);
}

static void
append_rack (GString *text, const BsPlan *before, const BsPlan *after)
{
  for (guint i = 0; i < after->order->len; i++)
    {
      const char *id = g_array_index (after->order, BsPlacement, i).lamination;

      if (bs_plan_find_place (before, id) < 0)
        /* Translators: the label of a lamination. */
        append_sentence (text,
                         g_strdup_printf (_ ("%s comes from the rack."), get_label (before, id)));
    }
  for (guint i = 0; i < before->order->len; i++)
    {
      const char *id = g_array_index (before->order, BsPlacement, i).lamination;

      if (bs_plan_find_place (after, id) < 0)
        /* Translators: the label of a lamination. */
        append_sentence (text,
                         g_strdup_printf (_ ("%s goes to the rack."), get_label (before, id)));
    }
}

char *
bs_words_order_moves (const BsPlan *before, const BsPlan *after)
{
  g_autofree BsOrderMove *moves = bs_order_moves_new (before, after);
  GString *text = g_string_new (NULL);
  guint n_moved = 0, n_turned = 0;

  for (guint i = 0; i < after->order->len; i++)
    {
      n_moved += moves[i].from >= 0 && moves[i].is_moved ? 1 : 0;
      n_turned += moves[i].from >= 0 && moves[i].turn != BS_ORIENTATION_AS_MARKED ? 1 : 0;
    }
  if (n_moved > 0)
    append_sentence (text, g_strdup_printf (ngettext ("%u lamination goes elsewhere.",
                                                      "%u laminations go elsewhere.", n_moved),
                                            n_moved));
  if (n_turned > 0)
    append_sentence (text, g_strdup_printf (ngettext ("%u lamination is turned.",
                                                      "%u laminations are turned.", n_turned),
                                            n_turned));
  append_rack (text, before, after);
  if (text->len == 0)
    g_string_append (text, _ ("The slab lies in this order."));
  return g_string_free (text, FALSE);
}

char *
bs_words_order_listing (const BsPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->order->len; i++)
    {
      const BsPlacement *placement = &g_array_index (plan->order, BsPlacement, i);

      /* Translators: the label of a lamination and how it lies: "A1 turned over". */
      g_autofree char *entry = g_strdup_printf (C_ ("lamination and how it lies", "%s %s"),
                                                get_label (plan, placement->lamination),
                                                bs_words_orientation (placement->orientation));
      g_string_append_printf (text, "%s%s", i > 0 ? ", " : "", entry);
    }
  return g_string_free (text, FALSE);
}
