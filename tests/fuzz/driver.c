/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* Mutates valid JSON files and gives each mutant to LLVMFuzzerTestOneInput (): the same mutants on
 * each run. Most mutations keep the text JSON, so that they reach past its syntax. */

#include "fuzz.h"

#include <stdlib.h>
#include <string.h>

/* A value in a JSON text, and the member or element that it is part of. */
typedef struct
{
  gsize member; /* start of its key, or of itself */
  gsize start, end;
} Span;

static const char *const values[] = {
  "null",
  "true",
  "false",
  "0",
  "-0.0",
  "1",
  "-1",
  "2",
  "0.5",
  "1e-308",
  "1e308",
  "1e999",
  "2147483648",
  "9007199254740993",
  "9223372036854775807",
  "99999999999999999999",
  "NaN",
  "0x10",
  "\"\"",
  "\"a1\"",
  "\"\\u0000\"",
  "\"\\ud800\"",
  "\"\xC3\xA9\"",
  "\"\xC3\"",
  "'a'",
  "{}",
  "[]",
  "[[]]",
  "{\"id\": \"x\"}",
  "[{}]",
  "[{\"first\": 0, \"count\": 2}]",
  "\"over\"",
  "\"knot\"",
  "\"on-flat\"",
  "\"inch\"",
};

static gsize
skip_string (const char *text, gsize at)
{
  for (at++; text[at] != '"'; at++)
    at += text[at] == '\\';
  return at + 1;
}

static gsize
skip_space (const char *text, gsize at)
{
  return at + strspn (text + at, " \n\r\t");
}

/* Of valid JSON. Containers are listed before what they hold. */
static gsize
list_spans (const char *text, gsize member, gsize at, GArray *spans)
{
  const guint index = spans->len;
  g_array_append_val (spans, ((Span){ member, at, at }));

  gsize end = at;
  if (text[at] == '"')
    end = skip_string (text, at);
  else if (text[at] != '{' && text[at] != '[')
    end = at + strcspn (text + at, ",]} \n\r\t");
  else
    {
      const gboolean is_object = text[at] == '{';
      end = skip_space (text, at + 1);
      while (text[end] != '}' && text[end] != ']')
        {
          const gsize start = end;
          if (is_object)
            end = skip_space (text, skip_space (text, skip_string (text, end)) + 1);
          end = skip_space (text, list_spans (text, start, end, spans));
          if (text[end] == ',')
            end = skip_space (text, end + 1);
        }
      end++;
    }
  g_array_index (spans, Span, index).end = end;
  return end;
}

static const Span *
choose_span (GRand *random, GArray *spans)
{
  return &g_array_index (spans, Span, g_rand_int_range (random, 0, (gint32)spans->len));
}

static void
replace (GString *text, gsize start, gsize end, const char *by)
{
  g_string_erase (text, (gssize)start, (gssize)(end - start));
  g_string_insert (text, (gssize)start, by);
}

static void
delete_member (GString *text, const Span *span)
{
  gsize start = span->member;
  gsize end = skip_space (text->str, span->end);

  if (text->str[end] == ',')
    end++;
  else
    while (start > 0 && text->str[start - 1] != '{' && text->str[start - 1] != '['
           && text->str[start] != ',')
      start--;
  replace (text, start, end, "");
}

static void
duplicate_member (GString *text, const Span *span)
{
  g_autofree char *member = g_strndup (text->str + span->member, (gsize)(span->end - span->member));
  g_autofree char *copy = g_strconcat (member, ", ", NULL);
  g_string_insert (text, (gssize)span->member, copy);
}

static void
scale_number (GString *text, GRand *random, const Span *span)
{
  static const double factors[] = { -1.0, 0.0, 0.1, 0.99, 1.01, 2.0, 25.4, 1e3 };
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  char *end = NULL;
  const double number = g_ascii_strtod (text->str + span->start, &end);

  if (end != text->str + span->end)
    return;
  const double factor = factors[g_rand_int_range (random, 0, G_N_ELEMENTS (factors))];
  replace (text, span->start, span->end, g_ascii_dtostr (digits, sizeof digits, number * factor));
}

static void
change_bytes (GString *text, GRand *random)
{
  const gsize at = (gsize)g_rand_int_range (random, 0, (gint32)text->len);

  if (g_rand_boolean (random))
    g_string_truncate (text, at);
  else
    text->str[at] = (char)g_rand_int_range (random, 0, 256);
}

static void
mutate (GString *text, GRand *random)
{
  g_autoptr (GArray) spans = g_array_new (FALSE, FALSE, sizeof (Span));
  list_spans (text->str, 0, skip_space (text->str, 0), spans);
  const Span *span = choose_span (random, spans);
  const Span *other = choose_span (random, spans);

  switch (g_rand_int_range (random, 0, 6))
    {
    case 0:
      replace (text, span->start, span->end,
               values[g_rand_int_range (random, 0, G_N_ELEMENTS (values))]);
      break;
    case 1:
      {
        g_autofree char *value
            = g_strndup (text->str + other->start, (gsize)(other->end - other->start));
        replace (text, span->start, span->end, value);
        break;
      }
    case 2:
      if (span->member > 0)
        delete_member (text, span);
      break;
    case 3:
      if (span->member > 0)
        duplicate_member (text, span);
      break;
    default:
      scale_number (text, random, span);
      break;
    }
}

typedef struct
{
  char *text;
  guint n_mutants;
} Seed;

static void
free_seed (gpointer data)
{
  Seed *seed = data;
  g_free (seed->text);
  g_free (seed);
}

static void
test_mutants (gconstpointer data)
{
  const Seed *seed = data;
  g_autoptr (GRand) random = g_rand_new_with_seed (seed->n_mutants);

  for (guint i = 0; i < seed->n_mutants; i++)
    {
      g_autoptr (GString) text = g_string_new (seed->text);
      mutate (text, random);
      if (i % 8 == 7 && text->len > 0)
        change_bytes (text, random);
      LLVMFuzzerTestOneInput ((const guint8 *)text->str, text->len);
    }
}

/* Usage: driver [test options] COUNT FILE... */
int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  const guint n_mutants = argc > 1 ? (guint)atoi (argv[1]) : 0;
  for (int i = 2; i < argc; i++)
    {
      Seed *seed = g_new0 (Seed, 1);
      seed->n_mutants = n_mutants;
      g_assert_true (g_file_get_contents (argv[i], &seed->text, NULL, NULL));
      g_autofree char *name = g_path_get_basename (argv[i]);
      g_autofree char *path = g_strconcat ("/fuzz/document/", name, NULL);
      g_test_add_data_func_full (path, seed, test_mutants, free_seed);
    }
  return g_test_run ();
}
