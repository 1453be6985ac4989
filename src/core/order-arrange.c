/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-rules.h"

/* Attempts to fit the groups of neighbours between the pinned places; more means that there are
 * hundreds of pins that hardly fit. */
#define MAX_ATTEMPTS 1000000

/* A row of pinned neighbours. */
typedef struct
{
  GArray *members; /* int, from one end to the other */
  gboolean has_place;
} Group;

static void
clear_group (gpointer data)
{
  Group *group = data;
  g_array_unref (group->members);
}

static Group
follow_group (const BsOrderRules *self, guint end)
{
  Group group = { g_array_new (FALSE, FALSE, sizeof (int)), FALSE };
  int before = BS_ORDER_NOBODY, here = (int)end;

  while (here != BS_ORDER_NOBODY)
    {
      int next = bs_order_rules_next_partner (self, before, here);
      g_array_append_val (group.members, here);
      if (self->place_of[here] != BS_ORDER_NOBODY)
        group.has_place = TRUE;
      before = here;
      here = next;
    }
  return group;
}

/* Groups with a pinned place among them go first, since they have the least choice. */
static GArray *
list_groups (const BsOrderRules *self)
{
  GArray *groups = g_array_new (FALSE, FALSE, sizeof (Group));

  g_array_set_clear_func (groups, clear_group);
  for (guint i = 0; i < self->n_candidates; i++)
    {
      const int *sides = self->partners[i];
      Group group;

      if ((sides[0] == BS_ORDER_NOBODY) == (sides[1] == BS_ORDER_NOBODY))
        continue; /* alone, or inside a row */
      group = follow_group (self, i);
      if (g_array_index (group.members, int, group.members->len - 1) < (int)i)
        clear_group (&group); /* was met from its other end */
      else if (group.has_place)
        g_array_prepend_val (groups, group);
      else
        g_array_append_val (groups, group);
    }
  return groups;
}

static int
group_member (const Group *group, guint i, gboolean is_reversed)
{
  return g_array_index (group->members, int, is_reversed ? group->members->len - 1 - i : i);
}

static gboolean
group_fits (const BsOrderRules *self, const Group *group, guint place, gboolean is_reversed)
{
  for (guint i = 0; i < group->members->len; i++)
    if (self->start[place + i] != BS_ORDER_NOBODY
        || !bs_order_rules_allow (self, place + i, (guint)group_member (group, i, is_reversed)))
      return FALSE;
  return TRUE;
}

/* Lays the groups from `first` on among those already laid; takes them away again when they do not
 * fit. */
static gboolean
lay_groups (BsOrderRules *self, const GArray *groups, guint first, guint *attempts)
{
  const Group *group = &g_array_index (groups, Group, first);
  guint n;

  if (first == groups->len)
    return TRUE;
  n = group->members->len;
  for (guint place = 0; place + n <= self->n_places; place++)
    for (int is_reversed = 0; is_reversed < 2; is_reversed++)
      {
        if (++*attempts > MAX_ATTEMPTS)
          return FALSE;
        if (!group_fits (self, group, place, is_reversed))
          continue;
        for (guint i = 0; i < n; i++)
          self->start[place + i] = group_member (group, i, is_reversed);
        if (lay_groups (self, groups, first + 1, attempts))
          return TRUE;
        for (guint i = 0; i < n; i++)
          self->start[place + i] = BS_ORDER_NOBODY;
      }
  return FALSE;
}

gboolean
bs_order_rules_arrange (BsOrderRules *self)
{
  g_autoptr (GArray) groups = list_groups (self);
  guint attempts = 0;

  if (!lay_groups (self, groups, 0, &attempts))
    return FALSE;
  for (guint k = 0; k < self->n_places; k++)
    if (self->candidate_at[k] != BS_ORDER_NOBODY)
      self->start[k] = self->candidate_at[k];
  return TRUE;
}
