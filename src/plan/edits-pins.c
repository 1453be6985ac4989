/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits-private.h"

#include "core/text.h"

/* Edits of what matters about the order, and of what it must keep. */

BsPlan *
bs_edit_set_wishes (BsPlan *plan, const BsOrderWishes *wishes)
{
  const BsOrderWishes *present = &plan->wishes;

  if (present->looks == wishes->looks && present->easy_planing == wishes->easy_planing
      && present->stays_flat == wishes->stays_flat && present->uses_rack == wishes->uses_rack)
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  edited->wishes = *wishes;
  return edited;
}

static gboolean
is_same_pin (const BsPin *a, const BsPin *b)
{
  if (a->kind != b->kind || a->place != b->place)
    return FALSE;
  if (g_str_equal (a->lamination, b->lamination))
    return g_strcmp0 (a->other, b->other) == 0;
  return a->kind == BS_PIN_NEIGHBOURS && g_str_equal (a->lamination, b->other)
         && g_str_equal (a->other, b->lamination);
}

static gboolean
is_of_face (const BsPin *pin)
{
  return pin->kind == BS_PIN_TOP_UP || pin->kind == BS_PIN_UNDERSIDE_UP;
}

/* Whether a lamination can have one of the two pins only. */
static gboolean
excludes_pin (const BsPin *a, const BsPin *b)
{
  return g_str_equal (a->lamination, b->lamination)
         && ((a->kind == BS_PIN_PLACE && b->kind == BS_PIN_PLACE)
             || (is_of_face (a) && is_of_face (b)));
}

BsPlan *
bs_edit_add_pin (BsPlan *plan, const BsPin *pin)
{
  g_return_val_if_fail (bs_plan_find_lamination (plan, pin->lamination) != NULL, NULL);
  g_return_val_if_fail ((pin->kind == BS_PIN_PLACE) == (pin->place >= 0), NULL);
  g_return_val_if_fail ((pin->kind == BS_PIN_NEIGHBOURS) == (pin->other != NULL), NULL);

  for (guint i = 0; i < plan->pins->len; i++)
    if (is_same_pin (&g_array_index (plan->pins, BsPin, i), pin))
      return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  const BsPin added = { pin->kind, pin->lamination, pin->place, pin->other, NULL };
  for (guint i = edited->pins->len; i-- > 0;)
    if (excludes_pin (&g_array_index (edited->pins, BsPin, i), pin))
      g_array_remove_index (edited->pins, i);
  bs_text_share (added.lamination);
  bs_text_share (added.other);
  g_array_append_val (edited->pins, added);
  return edited;
}

BsPlan *
bs_edit_remove_pin (BsPlan *plan, guint index)
{
  g_return_val_if_fail (index < plan->pins->len, NULL);

  BsPlan *edited = bs_plan_copy (plan);
  g_array_remove_index (edited->pins, index);
  return edited;
}

void
bs_edit_drop_pins (BsPlan *plan, const char *lamination)
{
  for (guint i = plan->pins->len; i-- > 0;)
    {
      const BsPin *pin = &g_array_index (plan->pins, BsPin, i);
      if (g_str_equal (pin->lamination, lamination) || g_strcmp0 (pin->other, lamination) == 0)
        g_array_remove_index (plan->pins, i);
    }
}
