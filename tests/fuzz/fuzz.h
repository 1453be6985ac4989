/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The entry that libFuzzer and driver.c call; the name is libFuzzer's. */
int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

G_END_DECLS
