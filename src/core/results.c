/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/results.h"

BsResults *
bs_results_ref (BsResults *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_results (gpointer data)
{
  BsResults *self = data;

  bs_stack_free (self->stack);
  g_array_unref (self->clamps.positions);
  g_array_unref (self->slots);
  g_array_unref (self->set_clamps);
  g_array_unref (self->findings);
}

void
bs_results_unref (BsResults *self)
{
  g_atomic_rc_box_release_full (self, clear_results);
}

BsSeverity
bs_results_worst (const BsResults *self)
{
  return self->findings->len > 0 ? g_array_index (self->findings, BsFinding, 0).severity
                                 : BS_SEVERITY_NOTE;
}
