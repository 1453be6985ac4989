/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The texts of a plan: shared, never changed, NULL when not said. */

/* Replaces a text by a copy of value (or NULL). */
static inline void
bs_text_set (GRefString **text, const char *value)
{
  GRefString *copy = value != NULL ? g_ref_string_new (value) : NULL;
  g_clear_pointer (text, g_ref_string_release);
  *text = copy;
}

/* For a struct that was copied byte for byte: takes a reference of its own. */
static inline void
bs_text_share (GRefString *text)
{
  if (text != NULL)
    g_ref_string_acquire (text);
}

static inline void
bs_text_clear (GRefString **text)
{
  g_clear_pointer (text, g_ref_string_release);
}

/* What was found, for a sentence about it: stripped, and the beginning of it alone where it is
 * long. The caller's. */
char *bs_text_excerpt (const char *text);

G_END_DECLS
