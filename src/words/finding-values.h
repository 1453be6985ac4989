/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* What the sentences about a finding put in: its values in the person's units, and the labels of
 * its laminations ("" when it is about the whole slab). */
typedef struct
{
  char *first, *second, *third;
  const char *label, *neighbour;
  char *recommended, *reached; /* pressures, of the clamps */
} FindingValues;

void bs_finding_values_init (FindingValues *self, const BsFinding *finding,
                             const BsResults *results);
void bs_finding_values_clear (FindingValues *self);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FindingValues, bs_finding_values_clear)

G_END_DECLS
