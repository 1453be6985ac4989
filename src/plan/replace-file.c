/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#define _DEFAULT_SOURCE /* realpath () */
#include "plan/replace-file.h"

#include <glib/gstdio.h>
#include <stdlib.h>

gboolean
bs_replace_file (const char *filename, const char *text, GError **error)
{
  GStatBuf status;
  char *target = realpath (filename, NULL);
  const int mode = g_stat (filename, &status) == 0 ? (int)(status.st_mode & 07777) : 0666;
  const gboolean is_saved = g_file_set_contents_full (
      target != NULL ? target : filename, text, -1,
      G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, mode, error);

  free (target);
  return is_saved;
}
