/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* Mutates tables of text and gives each mutant to LLVMFuzzerTestOneInput (): the same mutants on
 * each run. */

#include "fuzz.h"

#include <stdlib.h>

static const char *const tables[] = {
  "label,wood,thickness,width,length,moisture,price,bow,crook,cup,twist,pith_y,pith_z\r\n"
  "A,oak white,8/4,7 1/2\",8',8.5,42.50,3,-2,1,0.5,10,-60\r\n"
  "\"B, \"\"the good one\"\"\",beech european,50,150 mm,2.44 m,,,,,,,,\r\n",
  "\xEF\xBB\xBFl\xC3\xA4nge;width (in);thickness (mm);length (ft)\n1;6 "
  "1/2;50,8;8\n;;;\n2;7;27;10\n",
  "thickness\twidth\tlength\n8/4\t6\"\t8'\n\n27\t120\t2000\n",
};

static const char *const pieces[] = {
  "\"",
  "\"\"",
  ",",
  ";",
  "\t",
  "\n",
  "\r",
  "\r\n",
  "\xEF\xBB\xBF",
  "\xFF\xFE",
  "\xC3",
  "-",
  "1/0",
  "1e9",
  "1e999",
  "nan",
  "0x10",
  "99999999999999999999",
  "2,440",
  "8/4",
  "'",
  " ",
  "ells",
  "length",
  "thickness (furlongs)",
  "wood",
  "pine",
  "\xE2\x80\xB3",
};

static void
mutate (GString *text, GRand *random)
{
  gssize at = g_rand_int_range (random, 0, (gint32)text->len + 1);
  gssize wish = g_rand_int_range (random, 0, 9);
  gssize length = MIN (wish, (gssize)text->len - at);

  if (g_rand_boolean (random))
    g_string_erase (text, at, length);
  if (g_rand_int_range (random, 0, 4) > 0)
    g_string_insert (text, at, pieces[g_rand_int_range (random, 0, G_N_ELEMENTS (pieces))]);
  if (g_rand_int_range (random, 0, 16) == 0 && text->len > 0)
    text->str[g_rand_int_range (random, 0, (gint32)text->len)]
        = (char)g_rand_int_range (random, 0, 256);
}

static guint n_mutants;

static void
test_mutants (gconstpointer table)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (n_mutants);

  for (guint i = 0; i < n_mutants; i++)
    {
      g_autoptr (GString) text = g_string_new (table);
      int n = g_rand_int_range (random, 0, 6);

      for (int k = 0; k < n; k++)
        mutate (text, random);
      LLVMFuzzerTestOneInput ((const guint8 *)text->str, text->len);
    }
}

/* Usage: tables [test options] COUNT */
int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  n_mutants = argc > 1 ? (guint)atoi (argv[1]) : 0;
  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      g_autofree char *path = g_strdup_printf ("/fuzz/boards-csv/%" G_GSIZE_FORMAT, i + 1);
      g_test_add_data_func (path, tables[i], test_mutants);
    }
  return g_test_run ();
}
