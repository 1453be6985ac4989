/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

#include "core/plan.h"

G_BEGIN_DECLS

/* The tables that come with the program: woods and classes of adhesive, from data/. Loaded once, on
 * first use; borrowed for the life of the program. */
const GPtrArray *bs_tables_get_woods (void);     /* BsWood, by name */
const GPtrArray *bs_tables_get_adhesives (void); /* BsAdhesive */

/* NULL when there is no such row. */
const BsWood *bs_tables_find_wood (const char *id);
const BsAdhesive *bs_tables_find_adhesive (const char *id);

/* Some tables give a wood's density at 12 % in place of its specific gravity: what that comes to in
 * a row of theirs, NAN when it says nothing. */
double bs_tables_get_sg_of_density (JsonObject *row);

G_END_DECLS
