/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/csv.h"

#include <string.h>

/* Wanted rows are written as 1[a|b] 3![c]: the line, ! or ? where the row is not to be used (a mark
 * never closed, or something after one), the cells. By RFC 4180, section 2, where the path names
 * one of its rules. */
typedef struct
{
  const char *path;
  const char *text;
  char separator;
  const char *wanted;
} Row;

static const Row rows[] = {
  { "empty", "", ',', "" },
  { "rule-1-crlf", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", ',', "1[aaa|bbb|ccc] 2[zzz|yyy|xxx]" },
  { "rule-2-no-last-line-end", "aaa,bbb\r\nzzz,yyy", ',', "1[aaa|bbb] 2[zzz|yyy]" },
  { "rule-4-spaces-are-kept", " a ,b", ',', "1[ a |b]" },
  { "rule-5-marks", "\"aaa\",\"bbb\",ccc", ',', "1[aaa|bbb|ccc]" },
  { "rule-6-line-end-within", "\"aaa\",\"b\r\nbb\",ccc\r\nzzz", ',', "1[aaa|b\r\nbb|ccc] 3[zzz]" },
  { "rule-6-separator-within", "\"a,a\",b", ',', "1[a,a|b]" },
  { "rule-7-doubled", "\"aaa\",\"b\"\"bb\",\"ccc\"", ',', "1[aaa|b\"bb|ccc]" },
  { "only-marks", "\"\"\"\"", ',', "1[\"]" },
  { "empty-cells", ",,\n\"\",", ',', "1[||] 2[|]" },
  { "inch-marks", "8/4,4 1/2\",8'\n", ',', "1[8/4|4 1/2\"|8']" },
  { "unix-line-ends", "a\nb\n", ',', "1[a] 2[b]" },
  { "old-line-ends", "a\rb\r", ',', "1[a] 2[b]" },
  { "empty-lines", "a\n\n\r\n\nb", ',', "1[a] 2[] 3[] 4[] 5[b]" },
  { "semicolons", "a;4,5;b", ';', "1[a|4,5|b]" },
  { "tabs", "a\t\tb", '\t', "1[a||b]" },
  { "never-closed", "a,\"b\nc,d\n", ',', "1![a|\"b] 2[c|d]" },
  { "never-closed-at-the-end", "a\n\"", ',', "1[a] 2![\"]" },
  { "after-the-mark", "\"a\"b,c\nd", ',', "1?[ab|c] 2[d]" },
  { "other-scripts", "\xC3\x96l,\xE6\x9C\xA8", ',', "1[\xC3\x96l|\xE6\x9C\xA8]" },
};

static char *
describe (const GPtrArray *table)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < table->len; i++)
    {
      static const char *const states[]
          = { [BS_CSV_FINE] = "", [BS_CSV_NEVER_CLOSED] = "!", [BS_CSV_AFTER_QUOTE] = "?" };
      const BsCsvRow *row = table->pdata[i];
      g_string_append_printf (text, "%s%u%s[", i > 0 ? " " : "", row->line, states[row->state]);
      for (guint k = 0; k < row->cells->len; k++)
        g_string_append_printf (text, "%s%s", k > 0 ? "|" : "", (char *)row->cells->pdata[k]);
      g_string_append_c (text, ']');
    }
  return g_string_free (text, FALSE);
}

static void
test_read (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (GPtrArray) table = bs_csv_read (row->text, row->separator);
  g_autofree char *found = describe (table);

  g_assert_cmpstr (found, ==, row->wanted);
}

/* What is written is read again as the same cells. */
static void
test_write (void)
{
  static const char *const cells[]
      = { "", "a", "4 1/2\"", "\"", "a,b", "a;b", "a\tb", "a\nb", "a\r\nb", " a ", "\"a\"" };
  static const char separators[] = { ',', ';', '\t' };

  for (gsize s = 0; s < G_N_ELEMENTS (separators); s++)
    {
      GString *text = g_string_new ("x");
      for (gsize i = 0; i < G_N_ELEMENTS (cells); i++)
        {
          g_string_append_c (text, separators[s]);
          bs_csv_append (text, cells[i], separators[s]);
        }
      g_autofree char *line = g_string_free (text, FALSE);
      g_autoptr (GPtrArray) table = bs_csv_read (line, separators[s]);
      g_assert_cmpuint (table->len, ==, 1);
      const BsCsvRow *row = table->pdata[0];
      g_assert_cmpint (row->state, ==, BS_CSV_FINE);
      g_assert_cmpuint (row->cells->len, ==, G_N_ELEMENTS (cells) + 1);
      for (gsize i = 0; i < G_N_ELEMENTS (cells); i++)
        g_assert_cmpstr (row->cells->pdata[i + 1], ==, cells[i]);
    }
}

static void
test_separator (void)
{
  g_assert_true (bs_csv_find_separator ("a,b\tc;d\n") == '\t');
  g_assert_true (bs_csv_find_separator ("a,b;d\nx\ty") == ';');
  g_assert_true (bs_csv_find_separator ("a,b\nx;y") == ',');
  g_assert_true (bs_csv_find_separator ("") == ',');
}

/* Files. Bytes are counted, since some hold zeros; wanted NULL: refused with a sentence that holds
 * `sentence`. */
typedef struct
{
  const char *path;
  const char *bytes;
  gsize size;
  const char *wanted;
  const char *sentence;
} File;

#define BYTES(text) text, sizeof (text) - 1

static const File files[] = {
  { "utf-8", BYTES ("\xC3\xA4;b"), "\xC3\xA4;b", NULL },
  { "mark-of-order", BYTES ("\xEF\xBB\xBF\x61"), "a", NULL },
  { "only-a-mark", BYTES ("\xEF\xBB\xBF"), "", NULL },
  { "empty", BYTES (""), "", NULL },
  { "utf-16-little", BYTES ("\xFF\xFE\xE4\x00\x3B\x00"), "\xC3\xA4;", NULL },
  { "utf-16-big", BYTES ("\xFE\xFF\x00\xE4"), "\xC3\xA4", NULL },
  { "utf-16-only-a-mark", BYTES ("\xFF\xFE"), "", NULL },
  { "utf-16-with-zero", BYTES ("\xFF\xFE\x61\x00\x00\x00"), NULL, "UTF-16" },
  { "utf-16-cut-off", BYTES ("\xFF\xFE\x61"), NULL, "UTF-16" },
  { "latin-1", BYTES ("a\nb\r\nB\xFCrste"), NULL, "Line 3" },
  { "zero", BYTES ("a\n\0b"), NULL, "Line 2" },
};

static void
test_decode (gconstpointer data)
{
  const File *file = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bs_csv_decode (file->bytes, file->size, &error);

  g_assert_cmpstr (text, ==, file->wanted);
  if (file->wanted != NULL)
    g_assert_no_error (error);
  else
    {
      g_assert_error (error, BS_CSV_ERROR, BS_CSV_ERROR_ENCODING);
      g_assert_nonnull (strstr (error->message, file->sentence));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/csv/read/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_read);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *path = g_strconcat ("/csv/decode/", files[i].path, NULL);
      g_test_add_data_func (path, &files[i], test_decode);
    }
  g_test_add_func ("/csv/write", test_write);
  g_test_add_func ("/csv/separator", test_separator);
  return g_test_run ();
}
