/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/text.h"

/* Counted by hand. */
static const struct
{
  const char *path;
  const char *text;
  const char *excerpt;
} excerpts[] = {
  { "/text/excerpt/short", "12 ells", "12 ells" },
  { "/text/excerpt/nothing", "  ", "" },
  { "/text/excerpt/spaces", "\t 12 ells\n", "12 ells" },
  { "/text/excerpt/forty", "1234567890123456789012345678901234567890",
    "1234567890123456789012345678901234567890" },
  { "/text/excerpt/long", "12345678901234567890123456789012345678901",
    "1234567890123456789012345678901234567890\342\200\246" },
  /* Letters, not bytes: 41 of two bytes each. */
  { "/text/excerpt/letters",
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244"
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244"
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244"
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244",
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244"
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244"
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244"
    "\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\303\244\342\200"
    "\246" },
  { "/text/excerpt/no-text", "\377", "\357\277\275" },
};

static void
test_excerpt (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autofree char *excerpt = bs_text_excerpt (excerpts[i].text);

  g_assert_cmpstr (excerpt, ==, excerpts[i].excerpt);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (excerpts); i++)
    g_test_add_data_func (excerpts[i].path, GSIZE_TO_POINTER (i), test_excerpt);
  return g_test_run ();
}
