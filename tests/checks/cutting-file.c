/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/cutting-file.h"

#include "core/random.h"

#include <json-glib/json-glib.h>
#include <math.h>

static double
read_number (JsonObject *object, const char *name, double otherwise)
{
  return json_object_has_member (object, name) ? json_object_get_double_member (object, name)
                                               : otherwise;
}

static CuttingFile *
new_file (guint n_stock, guint n_parts)
{
  CuttingFile *self = g_new0 (CuttingFile, 1);

  self->stock = g_new0 (BsCutStock, n_stock);
  self->parts = g_new0 (BsCutPart, n_parts);
  self->cutting = bs_cutting_default ();
  self->cutting.stock = self->stock;
  self->cutting.n_stock = n_stock;
  self->cutting.parts = self->parts;
  self->cutting.n_parts = n_parts;
  return self;
}

static void
read_defects (CuttingFile *self, BsCutStock *stock, JsonArray *array, guint *n_before)
{
  stock->defects = &self->defects[*n_before];
  stock->n_defects = json_array_get_length (array);
  for (guint k = 0; k < stock->n_defects; k++)
    {
      JsonObject *defect = json_array_get_object_element (array, k);
      self->defects[(*n_before)++] = (BsCutDefect){
        json_object_get_double_member (defect, "x0"),
        json_object_get_double_member (defect, "x1"),
        json_object_get_double_member (defect, "y0"),
        json_object_get_double_member (defect, "y1"),
        BS_CUT_BOTH_FACES,
      };
    }
}

static void
read_stock (CuttingFile *self, JsonArray *array)
{
  guint n_defects = 0;

  self->defects = g_new0 (BsCutDefect, 100);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonObject *object = json_array_get_object_element (array, i);
      BsCutStock *stock = &self->stock[i];

      stock->length = json_object_get_double_member (object, "length");
      stock->width = json_object_get_double_member (object, "width");
      stock->thickness = read_number (object, "thickness", 50.0);
      stock->price_minor = llround (json_object_get_double_member (object, "price") * 100.0);
      stock->supply = (int)read_number (object, "count", BS_CUT_UNLIMITED);
      if (json_object_has_member (object, "defects"))
        read_defects (self, stock, json_object_get_array_member (object, "defects"), &n_defects);
    }
}

static void
read_parts (CuttingFile *self, JsonArray *array)
{
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonObject *object = json_array_get_object_element (array, i);

      self->parts[i] = (BsCutPart){
        .length = json_object_get_double_member (object, "length"),
        .width = json_object_get_double_member (object, "width"),
        .thickness = read_number (object, "thickness", 50.0),
        .quantity = (int)json_object_get_int_member (object, "qty"),
        .clear_faces = 2,
        .clear_edges = 2,
      };
    }
}

static void
read_saw (CuttingFile *self, JsonObject *input)
{
  const char *mode = json_object_get_string_member_with_default (input, "mode", "crosscut");

  self->cutting.kerf = json_object_get_double_member (input, "kerf");
  self->cutting.trim_end = json_object_get_double_member (input, "trim_end");
  self->cutting.trim_edge = json_object_get_double_member (input, "trim_edge");
  self->cutting.min_offcut = json_object_get_double_member (input, "min_offcut");
  self->cutting.order = g_str_equal (mode, "both") ? BS_CUT_EITHER : BS_CUT_CROSSCUT_FIRST;
  if (json_object_has_member (input, "allow"))
    {
      JsonObject *allow = json_object_get_object_member (input, "allow");
      self->cutting.allow_length = json_object_get_double_member (allow, "length");
      self->cutting.allow_width = json_object_get_double_member (allow, "width");
    }
}

CuttingFile *
cutting_file_read (const char *name)
{
  g_autofree char *path
      = g_build_filename (g_getenv ("BROADSTAVE_SOURCE"), "tests", "data", name, NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  JsonObject *root, *input, *expected;
  JsonArray *stock, *parts;
  CuttingFile *self;

  if (!json_parser_load_from_file (parser, path, &error))
    g_error ("%s", error->message);
  root = json_node_get_object (json_parser_get_root (parser));
  input = json_object_get_object_member (root, "input");
  expected = json_object_get_object_member (root, "expected");
  stock = json_object_get_array_member (input, "stock");
  parts = json_object_get_array_member (input, "parts");
  self = new_file (json_array_get_length (stock), json_array_get_length (parts));
  read_stock (self, stock);
  read_parts (self, parts);
  read_saw (self, input);
  self->price_minor = llround (json_object_get_double_member (expected, "price") * 100.0);
  self->waste_area = json_object_get_double_member (expected, "waste_area");
  self->score = json_object_get_double_member (expected, "offcut_score");
  return self;
}

const char *
cutting_find_benchmarks (void)
{
  const char *folder = g_getenv ("BROADSTAVE_BENCHMARKS");

  if (folder == NULL)
    g_test_skip ("BROADSTAVE_BENCHMARKS is not set");
  return folder;
}

GArray *
cutting_read_numbers (const char *folder, const char *kind, const char *name)
{
  g_autofree char *path = g_build_filename (folder, kind, name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (double));
  char *next;

  if (!g_file_get_contents (path, &text, NULL, &error))
    g_error ("%s", error->message);
  next = text;
  for (;;)
    {
      char *end;
      double number = g_ascii_strtod (next, &end);
      if (end == next)
        return numbers;
      g_array_append_val (numbers, number);
      next = end;
    }
}

/* Sizes are whole numbers without a unit; this is what makes boards of 1 to 10 m of them. */
static double
unit_of (double capacity)
{
  return capacity <= 1000.0 ? 10.0 : 10000.0 / capacity;
}

CuttingFile *
cutting_row_read (const char *folder, const char *name)
{
  g_autoptr (GArray) numbers = cutting_read_numbers (folder, "1d", name);
  const double *number = (const double *)numbers->data;
  guint n = (guint)number[0];
  double unit = unit_of (number[1]);
  CuttingFile *self = new_file (1, n);

  self->cutting.kerf = 0.0;
  self->stock[0]
      = (BsCutStock){ number[1] * unit, 100.0, 50.0, 1, BS_CUT_UNLIMITED, 0, 0, 0, NULL };
  for (guint i = 0; i < n; i++)
    self->parts[i] = (BsCutPart){
      number[2 + 2 * i] * unit, 100.0, 50.0, (int)number[3 + 2 * i], 0, 2, 2, FALSE
    };
  return self;
}

CuttingFile *
cutting_sheet_read (const char *folder, const char *name)
{
  g_autoptr (GArray) numbers = cutting_read_numbers (folder, "2d", name);
  const double *number = (const double *)numbers->data;
  guint n = (guint)number[2];
  CuttingFile *self = new_file (1, n);

  self->cutting.kerf = 0.0;
  self->cutting.order = BS_CUT_CROSSCUT_FIRST;
  self->stock[0] = (BsCutStock){ number[0], number[1], 50.0, 1, BS_CUT_UNLIMITED, 0, 0, 0, NULL };
  for (guint i = 0; i < n; i++)
    self->parts[i] = (BsCutPart){
      number[3 + 3 * i], number[4 + 3 * i], 50.0, (int)number[5 + 3 * i], 0, 2, 2, FALSE
    };
  return self;
}

static double
draw (BsRandom *random, double least, double step, guint n)
{
  return least + step * bs_random_below (random, n);
}

static void
draw_defects (BsRandom *random, BsCutStock *stock, BsCutDefect *defects)
{
  stock->supply = 1;
  stock->defects = defects;
  stock->n_defects = 1 + bs_random_below (random, 3);
  for (guint k = 0; k < stock->n_defects; k++)
    {
      double x = draw (random, 0.0, 10.0, (guint)stock->length / 10);
      double y = draw (random, 0.0, 5.0, (guint)stock->width / 5);
      defects[k] = (BsCutDefect){ x, x + draw (random, 20.0, 10.0, 20), y,
                                  y + draw (random, 10.0, 5.0, 20),
                                  (BsCutFaces)(1 + bs_random_below (random, 3)) };
    }
}

CuttingFile *
cutting_draw (guint64 seed, guint n_types, guint n_parts, guint n_stock, gboolean has_defects)
{
  BsRandom random = bs_random_init (seed);
  CuttingFile *self = new_file (n_stock, n_types);

  self->defects = g_new0 (BsCutDefect, 4 * n_stock);
  self->cutting.trim_end = 15.0;
  self->cutting.trim_edge = 2.0;
  self->cutting.allow_length = 20.0;
  self->cutting.allow_width = 4.0;
  for (guint i = 0; i < n_stock; i++)
    {
      BsCutStock *stock = &self->stock[i];
      double price_of_m2 = draw (&random, 40.0, 1.0, 20);

      stock->length = draw (&random, 1800.0, 300.0, 9);
      stock->width = draw (&random, 100.0, 25.0, 9);
      stock->thickness = 50.0;
      /* Every part has a board that is large enough for it. */
      if (i == 0)
        {
          stock->length = 2400.0;
          stock->width = 200.0;
        }
      stock->price_minor = (gint64)(stock->length * stock->width * 1e-6 * price_of_m2 * 100.0);
      stock->supply = bs_random_below (&random, 4) == 0 && i > 0
                          ? 1 + (int)bs_random_below (&random, 4)
                          : BS_CUT_UNLIMITED;
      if (has_defects && i % 3 == 1)
        draw_defects (&random, stock, &self->defects[(gsize)4 * i]);
    }
  for (guint i = 0; i < n_types; i++)
    self->parts[i] = (BsCutPart){ draw (&random, 300.0, 10.0, 151),
                                  draw (&random, 20.0, 5.0, 27),
                                  50.0,
                                  1,
                                  0,
                                  has_defects ? (int)bs_random_below (&random, 3) : 2,
                                  has_defects ? (int)bs_random_below (&random, 3) : 2,
                                  FALSE };
  for (guint i = n_types; i < n_parts; i++)
    self->parts[bs_random_below (&random, n_types)].quantity++;
  return self;
}

CuttingFile *
cutting_draw_purchase (guint64 seed)
{
  const double lengths[] = { 2440.0, 3050.0, 3660.0 }, widths[] = { 125.0, 150.0, 200.0, 250.0 };
  BsRandom random = bs_random_init (seed);
  CuttingFile *self = new_file (12, 8);

  self->cutting.trim_end = 15.0;
  self->cutting.trim_edge = 2.0;
  self->cutting.allow_length = 25.0;
  self->cutting.allow_width = 5.0;
  for (guint i = 0; i < 12; i++)
    {
      guint k = i % 3, j = i / 3;
      double length = lengths[k], width = widths[j];
      double price_of_m2 = 45.0 + 2.0 * k + 3.0 * j + draw (&random, 0.0, 0.5, 8);

      self->stock[i] = (BsCutStock){ length,
                                     width,
                                     50.0,
                                     (gint64)(length * width * 1e-6 * price_of_m2 * 10.0) * 10,
                                     BS_CUT_UNLIMITED,
                                     0,
                                     0,
                                     0,
                                     NULL };
    }
  for (guint i = 0; i < 8; i++)
    self->parts[i] = (BsCutPart){
      draw (&random, 400.0, 10.0, 81), draw (&random, 45.0, 5.0, 16), 50.0, 4, 0, 2, 2, FALSE
    };
  self->parts[0].length = draw (&random, 1500.0, 20.0, 41);
  self->parts[0].width = draw (&random, 85.0, 5.0, 8);
  self->parts[0].quantity = 60;
  for (guint i = 28; i < 40; i++)
    self->parts[1 + bs_random_below (&random, 7)].quantity++;
  return self;
}

void
cutting_file_free (CuttingFile *self)
{
  g_free (self->stock);
  g_free (self->parts);
  g_free (self->defects);
  g_free (self);
}
