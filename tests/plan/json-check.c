/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/json-check.h"

#include "plan/document.h"

#include <json-glib/json-glib.h>
#include <string.h>

/* What RFC 8259 allows and forbids. An error is compared by what it says was found and expected. */
typedef struct
{
  const char *name;
  const char *text;
  const char *error; /* NULL: good */
} Row;

static const Row rows[] = {
  { "good/object", "{}", NULL },
  { "good/scalar", " 12 ", NULL },
  { "good/nested", "{\"a\":[1,{\"b\":null},[]],\"c\":true,\"d\":false}", NULL },
  { "good/space", "\t{ \"a\" :\r\n 1 }\n", NULL },
  { "good/numbers", "[0,-0,0.5,-1.25,1e3,1E+3,1e-3,0e0,9223372036854775807]", NULL },
  { "good/escapes", "\"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e9\\ud83d\\ude00\"", NULL },
  { "good/utf8", "\"buche — Bäckerei\"", NULL },
  { "good/tiny-number", "1e-400", NULL },

  { "empty", "", "line 1 has the end of the file where a value" },
  { "two-values", "[1][2]", "line 1 has “[” where the end of the file is expected" },
  { "text-after", "{}\n\nx", "line 3 has “x” where the end of the file is expected" },
  { "comma-at-end/object", "{\"a\":1,}", "has “}” where a key in double quotes" },
  { "comma-at-end/list", "[1,]", "has “]” where a value" },
  { "no-comma", "[1 2]", "has “2” where a comma or a closing bracket" },
  { "no-colon", "{\"a\" 1}", "has “1” where a colon after the key" },
  { "no-brace", "{\"a\":1\n", "line 2 has the end of the file where a comma or a closing brace" },
  { "bare-key", "{a:1}", "has “a” where a key in double quotes" },
  { "single-quotes", "{'a':1}", "has “'” where a key in double quotes" },
  { "single-quotes/value", "{\"a\":'b'}", "has “'” where a value" },
  { "comment", "{\n// oak\n}", "line 2 has “/” where a key in double quotes" },
  { "key-twice", "{\"a\":1,\n\"a\":2}",
    "line 2 has “a” where a key that the object does not have" },
  { "key-twice/escaped", "{\"a\":1,\"\\u0061\":2}",
    "where a key that the object does not have yet" },
  { "word", "[yes]", "has “yes” where a value" },
  { "word/longer", "[truest]", "has “truest” where a value" },
  { "nan", "[NaN]", "has “NaN” where a value" },
  { "infinity", "[Infinity]", "has “Infinity” where a value" },
  { "number/hex", "[0x10]", "has “0x10” where a decimal number without a leading zero" },
  { "number/octal", "[010]", "has “010” where a decimal number without a leading zero" },
  { "number/plus", "[+1]", "has “+1” where a value" },
  { "number/point-first", "[.5]", "has “.5” where a value" },
  { "number/point-last", "[1.]", "has “]” where a digit" },
  { "number/comma", "[1,5e]", "has “]” where a digit" },
  { "number/minus", "[-]", "has “]” where a digit" },
  { "number/too-large", "[1e999]", "has “1e999” where a number small enough" },
  { "number/too-long", "[99999999999999999999]",
    "has “9999999999999999” where a number small enough" },
  { "string/open", "[\"a]", "has the end of the file where a double quote that ends the text" },
  { "string/line-end", "[\"a\nb\"]", "has the character U+000A where a double quote" },
  { "string/escape", "[\"\\x\"]", "has “x” where one of" },
  { "string/code", "[\"\\u12g4\"]", "has “g4” where a hexadecimal digit" },
  { "string/nul", "[\"\\u0000\"]", "where the number of a character after \\u" },
  { "string/high-surrogate", "[\"\\ud800\"]", "where the number of a character after \\u" },
  { "string/low-surrogate", "[\"\\udc00\"]", "where the number of a character after \\u" },
  { "string/two-high", "[\"\\ud800\\ud800\"]", "where the number of a character after \\u" },
  { "byte/latin-1",
    "[\"B\xE4"
    "cker\"]",
    "line 1 has a byte of value 228 where text in UTF-8" },
  { "byte/overlong", "[\"\xC0\x80\"]", "has a byte of value 192 where text in UTF-8" },
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (GError) error = NULL;
  const gboolean is_good = bs_json_check (row->text, strlen (row->text), &error);

  if (row->error == NULL)
    {
      g_assert_no_error (error);
      g_assert_true (is_good);

      /* What passes, json-glib reads. */
      g_autoptr (JsonNode) node = json_from_string (row->text, &error);
      g_assert_no_error (error);
      g_assert_nonnull (node);
      return;
    }
  g_assert_false (is_good);
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX);
  if (strstr (error->message, row->error) == NULL)
    g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, row->error));
}

/* 100,000 levels overflow json-glib's stack; 64 are more than a plan has. */
static void
test_depth (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *opening = g_strnfill (BS_JSON_MAX_DEPTH, '[');
  g_autofree char *closing = g_strnfill (BS_JSON_MAX_DEPTH, ']');
  g_autofree char *deepest = g_strconcat (opening, closing, NULL);
  g_autofree char *too_deep = g_strnfill (100000, '[');

  g_assert_true (bs_json_check (deepest, strlen (deepest), &error));
  g_assert_no_error (error);
  g_assert_false (bs_json_check (too_deep, strlen (too_deep), &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX);
}

static void
test_size (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *spaces = g_strnfill (BS_JSON_MAX_BYTES + 1, ' ');

  g_assert_false (bs_json_check (spaces, BS_JSON_MAX_BYTES + 1, &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX);
  g_assert_cmpstr (error->message, ==, "it holds more than 16 MB; is it the right file?");
}

static void
test_nul_inside (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (bs_json_check ("[1\0]", 4, &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/json-check/", rows[i].name, NULL);
      g_test_add_data_func (path, &rows[i], test_row);
    }
  g_test_add_func ("/json-check/depth", test_depth);
  g_test_add_func ("/json-check/size", test_size);
  g_test_add_func ("/json-check/nul-inside", test_nul_inside);
  return g_test_run ();
}
