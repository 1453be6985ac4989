/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "pdf.h"

#include <string.h>

gboolean
pdf_can_read (void)
{
  g_autofree char *text = g_find_program_in_path ("pdftotext");
  g_autofree char *info = g_find_program_in_path ("pdfinfo");

  if (text != NULL && info != NULL)
    return TRUE;
  g_test_skip ("needs pdftotext and pdfinfo, of poppler-utils");
  return FALSE;
}

static char *
run (const char *const *arguments)
{
  g_autoptr (GError) error = NULL;
  char *output = NULL;
  int status;

  g_spawn_sync (NULL, (char **)arguments, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &output, NULL,
                &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  return output;
}

char *
pdf_get_text (const char *filename, int page)
{
  g_autofree char *number = g_strdup_printf ("%d", page);
  const char *of_all[] = { "pdftotext", "-enc", "UTF-8", filename, "-", NULL };
  const char *of_page[]
      = { "pdftotext", "-enc", "UTF-8", "-f", number, "-l", number, filename, "-", NULL };
  g_autofree char *output = run (page == 0 ? of_all : of_page);
  g_auto (GStrv) words = g_strsplit_set (output, " \n\f\r\t", -1);
  GString *text = g_string_new ("");

  for (guint i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", words[i]);
  return g_string_free (text, FALSE);
}

char *
pdf_get_field (const char *filename, const char *field)
{
  const char *arguments[] = { "pdfinfo", filename, NULL };
  g_autofree char *output = run (arguments);
  g_auto (GStrv) lines = g_strsplit (output, "\n", -1);
  gsize length = strlen (field);

  for (guint i = 0; lines[i] != NULL; i++)
    if (g_str_has_prefix (lines[i], field) && lines[i][length] == ':')
      return g_strdup (g_strstrip (lines[i] + length + 1));
  return NULL;
}
