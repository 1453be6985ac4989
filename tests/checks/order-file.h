/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-cost.h"

/* One of the order problems in tests/data, with the cost that was found for it by other programs.
 */
typedef struct
{
  BsOrderProblem *problem;
  BsOrderPlace *places; /* [n_places] the best order that they know */
  gint32 cost;          /* of it */
  gint32 bound;         /* no order costs less; equal to the cost when that is proven */
  int plane;
} OrderFile;

/* Ends the program with a message when the file cannot be read. */
OrderFile *order_file_read (const char *name);
void order_file_free (OrderFile *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OrderFile, order_file_free)
