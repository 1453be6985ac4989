/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* What woods and classes of adhesive are called in the person's language; a name of the person's
 * own is not translated. Borrowed for as long as the wood or adhesive lives. */
const char *bs_words_wood (const BsWood *wood);
const char *bs_words_adhesive (const BsAdhesive *adhesive);

/* The names in the program's tables (data/), as message ids, NULL-terminated. */
extern const char *const bs_words_woods[];
extern const char *const bs_words_adhesives[];

G_END_DECLS
