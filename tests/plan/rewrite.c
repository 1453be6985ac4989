/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* Prints plan files as the program would save them, for the scripts beside this file: one file,
 * or its error and exit status 1. */

#include "plan/document.h"

#include <locale.h>

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;

  (void)setlocale (LC_ALL, "");
  if (argc != 2)
    return 2;
  g_autoptr (BsPlan) plan = bs_document_load (argv[1], &error);
  if (plan == NULL)
    {
      g_printerr ("%s\n", error->message);
      return 1;
    }
  g_autofree char *text = bs_document_write (plan);
  g_print ("%s", text);
  return 0;
}
