/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* Plan files: docs/plan-format.md. */

#define BS_DOCUMENT_ERROR (bs_document_error_quark ())
GQuark bs_document_error_quark (void);

typedef enum
{
  BS_DOCUMENT_ERROR_READ,   /* the file could not be read or written */
  BS_DOCUMENT_ERROR_SYNTAX, /* not JSON; the message names the line */
  BS_DOCUMENT_ERROR_FORMAT, /* JSON, but not a plan of a version known here */
  BS_DOCUMENT_ERROR_VALUE,  /* a field is missing, of the wrong kind or out of range; the message
                             * names its path */
} BsDocumentError;

/* The whole plan, or NULL with one sentence. */
BsPlan *bs_document_load (const char *filename, GError **error);
BsPlan *bs_document_parse (const char *text, gsize length, GError **error);

/* The same plan gives the same bytes. */
char *bs_document_write (const BsPlan *plan);

/* Replaces the file whole or leaves it as it was. */
gboolean bs_document_save (const BsPlan *plan, const char *filename, GError **error);

G_END_DECLS
