/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n.h>
#include <locale.h>

#include "app/application.h"

/* Run from the build folder, the translations are there and not where they will be installed. */
static const char *
locale_folder (void)
{
  const char *folder = g_getenv ("BROADSTAVE_LOCALEDIR");

  return folder != NULL ? folder : LOCALEDIR;
}

int
main (int argc, char **argv)
{
  (void)setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, locale_folder ());
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  g_autoptr (BsApplication) application = bs_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
