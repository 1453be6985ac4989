/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* JSON as Broadstave writes it: members in the order in which they were set, two spaces of indent,
 * an object or list that holds no other one on one line where it fits, the shortest decimal that
 * reads back to the same bits whatever the locale, a newline at the end. The same tree gives the
 * same bytes. */
char *bs_json_write (JsonObject *object);

/* Sets a number; not a number and infinity are left out. Whole numbers are written without a point.
 */
void bs_json_set_number (JsonObject *object, const char *key, double value);
void bs_json_add_number (JsonArray *array, double value);

/* Sets a text; NULL is left out. */
void bs_json_set_text (JsonObject *object, const char *key, const char *value);

G_END_DECLS
