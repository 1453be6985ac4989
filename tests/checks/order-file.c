/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/order-file.h"

#include <json-glib/json-glib.h>
#include <string.h>

/* The files call the faces A (left), B (right), C (top) and D (underside), and count bow towards
 * the left. `ring` is the face that the heart side looks at; Q stands for quartersawn. */

static BsFace
read_face (const char *letter)
{
  return (BsFace)(letter[0] - 'A');
}

static GArray *
read_defects (JsonArray *array)
{
  GArray *defects = g_array_new (FALSE, TRUE, sizeof (BsOrderDefect));

  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonObject *object = json_array_get_object_element (array, i);
      BsOrderDefect defect = {
        .face = read_face (json_object_get_string_member (object, "face")),
        .x_from = json_object_get_double_member (object, "x0"),
        .x_to = json_object_get_double_member (object, "x1"),
        .across = json_object_get_double_member (object, "w"),
        .severity = json_object_get_double_member (object, "sev"),
      };
      g_array_append_val (defects, defect);
    }
  return defects;
}

static BsOrderCandidate
read_candidate (JsonObject *object, double length)
{
  const char *ring = json_object_get_string_member (object, "ring");
  JsonObject *grain = json_object_get_object_member (object, "grain");

  return (BsOrderCandidate){
    .id = g_ref_string_new (json_object_get_string_member (object, "id")),
    .length = length,
    .bow = -json_object_get_double_member (object, "bow"),
    .crook = json_object_get_double_member (object, "crook"),
    .lightness = json_object_get_double_member (object, "colour"),
    .moisture_pct = json_object_get_double_member (object, "mc"),
    .heart_side = ring[0] == 'A'   ? -1
                  : ring[0] == 'B' ? 1
                                   : 0,
    .run_out_top = (int)json_object_get_int_member (grain, "C"),
    .run_out_underside = (int)json_object_get_int_member (grain, "D"),
    .defects = read_defects (json_object_get_array_member (object, "defects")),
  };
}

static BsOrderProblem *
read_problem (JsonObject *input)
{
  BsOrderProblem *problem = bs_order_problem_new ();
  JsonObject *show = json_object_get_object_member (input, "show");
  JsonArray *laminations = json_object_get_array_member (input, "laminations");

  problem->n_places = (guint)json_object_get_int_member (input, "n");
  problem->shows_front = json_object_get_boolean_member (show, "first");
  problem->shows_back = json_object_get_boolean_member (show, "last");
  for (guint i = 0; i < json_array_get_length (laminations); i++)
    {
      BsOrderCandidate candidate = read_candidate (json_array_get_object_element (laminations, i),
                                                   json_object_get_double_member (input, "length"));
      g_array_append_val (problem->candidates, candidate);
    }
  return problem;
}

static void
read_expected (OrderFile *self, JsonObject *expected)
{
  JsonArray *sequence = json_object_get_array_member (expected, "sequence");

  self->cost = (gint32)json_object_get_int_member (expected, "cost");
  self->bound = (gint32)json_object_get_int_member (expected, "lower_bound");
  self->plane = (int)json_object_get_int_member (expected, "plane");
  self->places = g_new (BsOrderPlace, json_array_get_length (sequence));
  for (guint k = 0; k < json_array_get_length (sequence); k++)
    {
      JsonArray *place = json_array_get_array_element (sequence, k);
      self->places[k] = (BsOrderPlace){
        .candidate = (guint)json_array_get_int_element (place, 0),
        .orientation = (BsOrientation)json_array_get_int_element (place, 1),
      };
    }
}

OrderFile *
order_file_read (const char *name)
{
  g_autofree char *path
      = g_build_filename (g_getenv ("BROADSTAVE_SOURCE"), "tests", "data", name, NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  OrderFile *self = g_new0 (OrderFile, 1);
  JsonObject *root;

  if (!json_parser_load_from_file (parser, path, &error))
    g_error ("%s", error->message);
  root = json_node_get_object (json_parser_get_root (parser));
  self->problem = read_problem (json_object_get_object_member (root, "input"));
  read_expected (self, json_object_get_object_member (root, "expected"));
  return self;
}

void
order_file_free (OrderFile *self)
{
  bs_order_problem_free (self->problem);
  g_free (self->places);
  g_free (self);
}
