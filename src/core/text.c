/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/text.h"

#define MOST_CHARS 40

char *
bs_text_excerpt (const char *text)
{
  g_return_val_if_fail (text != NULL, NULL);

  g_autofree char *valid = g_utf8_make_valid (text, -1);
  const char *bare = g_strstrip (valid);
  if (g_utf8_strlen (bare, -1) <= MOST_CHARS)
    return g_strdup (bare);
  g_autofree char *beginning = g_utf8_substring (bare, 0, MOST_CHARS);
  return g_strconcat (beginning, "\u2026", NULL);
}
