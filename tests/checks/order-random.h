/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-cost.h"
#include "core/random.h"

/* Laminations such as a rack may hold: a few defects on each, bows and crooks of a millimetre or
 * two, run-out, heart sides, colours and moistures all mixed. Which outer faces show is drawn too.
 */
BsOrderProblem *order_random_problem (BsRandom *random, guint n_candidates, guint n_places);

/* Pins of all kinds, drawn without asking whether they can be kept. */
void order_random_pins (BsRandom *random, BsOrderProblem *problem, guint n_pins);

/* Any order, with any orientations; free with g_free. */
BsOrderPlace *order_random_order (BsRandom *random, const BsOrderProblem *problem);

/* Whether each candidate is used at most once and all pins are kept. */
gboolean order_keeps_pins (const BsOrderProblem *problem, const BsOrderPlace *places);

/* The least cost of any order that keeps the pins, by trying all orders and orientations: up to 4
 * places. G_MAXINT32 when there is none. */
gint32 order_try_all (const BsOrderProblem *problem);
