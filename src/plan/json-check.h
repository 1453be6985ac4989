/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define BS_JSON_MAX_BYTES ((gsize)16 << 20)
#define BS_JSON_MAX_DEPTH 64

/* Whether a text is one JSON value by RFC 8259, in UTF-8, of sane size and depth, with no key twice
 * in an object and no number that a double or a 64-bit integer cannot hold.
 *
 * json-glib 1.6 reads more than JSON and some of it wrongly (99999999999999999999 as -1, 0x10 as
 * 16, [1][2] as [1]), and overflows the stack on deep nesting: nothing is given to it that did not
 * pass here. The error (BS_DOCUMENT_ERROR_SYNTAX) names the line. */
gboolean bs_json_check (const char *text, gsize length, GError **error);

G_END_DECLS
