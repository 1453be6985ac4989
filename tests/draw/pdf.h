/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What poppler's tools read in a PDF. FALSE, and the test is skipped with a word why, where they
 * are not installed. */
gboolean pdf_can_read (void);

/* The words of a page from 1, or with 0 of all pages, one space between them; the caller's. */
char *pdf_get_text (const char *filename, int page);

/* The value of a field of pdfinfo: "Pages", "Title", "CreationDate"; NULL when there is none; the
 * caller's. */
char *pdf_get_field (const char *filename, const char *field);
