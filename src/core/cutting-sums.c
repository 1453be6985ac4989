/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-sums.h"

/* A longer table takes more time than it saves. */
#define MAX_LENGTH 2000000

void
bs_cut_sums_init (BsCutSums *self, const BsCutModel *model, gint64 most)
{
  gint64 n;

  *self = (BsCutSums){ .most = most };
  for (guint i = 0; i < model->n_stock; i++)
    self->unit = bs_cut_common_divisor (self->unit, model->stock[i].price);
  if (self->unit == 0 || most / self->unit >= MAX_LENGTH)
    {
      self->unit = 0;
      return;
    }
  n = most / self->unit;
  self->next = g_new0 (gint32, n + 1);
  for (gint64 k = 0; k <= n; k++)
    self->next[k] = k == 0 ? 0 : -1;
  for (guint i = 0; i < model->n_stock; i++)
    {
      gint64 price = model->stock[i].price / self->unit;
      for (gint64 k = price; price > 0 && k <= n; k++)
        if (self->next[k - price] >= 0)
          self->next[k] = (gint32)k;
    }
  for (gint64 k = n - 1; k >= 0; k--)
    if (self->next[k] < 0)
      self->next[k] = self->next[k + 1];
}

void
bs_cut_sums_clear (BsCutSums *self)
{
  g_clear_pointer (&self->next, g_free);
}

gint64
bs_cut_sums_next (const BsCutSums *self, gint64 amount)
{
  gint32 next;

  if (amount <= 0)
    return 0;
  if (amount > self->most)
    return G_MAXINT64;
  if (self->unit == 0)
    return amount;
  if ((amount + self->unit - 1) / self->unit > self->most / self->unit)
    return G_MAXINT64;
  next = self->next[(amount + self->unit - 1) / self->unit];
  return next < 0 ? G_MAXINT64 : next * self->unit;
}
