/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/session.h"
#include "core/pressure.h"

G_BEGIN_DECLS

/* The pressures of the plan shown: the exact ones when they are there, else those of the faster
 * form, which may be a little behind a moving hand. Borrowed until they change; NULL before the
 * first. */
const BsPressure *bs_live_pressure_get (BsSession *session);

/* They are those of the plan shown, by either form. */
gboolean bs_live_pressure_is_current (BsSession *session);

/* Calls `changed` with `object` as its only argument whenever they change, as long as it lives. */
void bs_live_pressure_connect (BsSession *session, GCallback changed, gpointer object);

G_END_DECLS
