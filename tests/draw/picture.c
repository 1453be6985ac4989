/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"

#include <math.h>

#include "core/text.h"
#include "image.h"
#include "scene.h"

#define WIDTH 1000
#define HEIGHT 800

typedef void (*Draw) (cairo_t *, const BsResults *, const BsScale *, const BsPalette *);

typedef struct
{
  const char *name;
  Draw draw;
} Part;

static void
draw_one_end (cairo_t *cr, const BsResults *results, const BsScale *scale, const BsPalette *palette)
{
  if (results->stack->n > 0)
    bs_draw_end (cr, &results->stack->placed[0], scale, palette, BS_MARK_SELECTED | BS_MARK_STOP);
}

static void
draw_one_face (cairo_t *cr, const BsResults *results, const BsScale *scale,
               const BsPalette *palette)
{
  if (results->stack->n > 0)
    bs_draw_face (cr, &results->stack->placed[0], NULL, scale, palette, BS_MARK_HELD);
}

static void
draw_all_faces (cairo_t *cr, const BsResults *results, const BsScale *scale,
                const BsPalette *palette)
{
  bs_draw_face_picture (cr, results, NULL, scale, palette);
}

static const Part parts[] = {
  { "end", draw_one_end },
  { "face", draw_one_face },
  { "section-picture", bs_draw_section_picture },
  { "face-picture", draw_all_faces },
  { "finished-faces", bs_draw_finished_faces },
  { "dimensions", bs_draw_dimensions },
  { "surroundings", bs_draw_surroundings },
  { "tape", bs_draw_tape },
};

static BsResults *
evaluate (int n, BsLayup layup)
{
  g_autoptr (BsPlan) plan = scene_new_plan (n, layup);

  return bs_evaluate (plan);
}

/* Everything that a later drawing would notice. */
static void
assert_as_before (cairo_t *cr, cairo_pattern_t *source)
{
  double x1, y1, x2, y2;
  cairo_matrix_t matrix;

  cairo_get_matrix (cr, &matrix);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpfloat_with_epsilon (matrix.x0, 3.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (matrix.y0, 4.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (matrix.xx, 1.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (cairo_get_line_width (cr), 7.0, 1e-9);
  g_assert_cmpint (cairo_get_dash_count (cr), ==, 1);
  g_assert_cmpint (cairo_get_line_cap (cr), ==, CAIRO_LINE_CAP_SQUARE);
  g_assert_cmpint (cairo_get_line_join (cr), ==, CAIRO_LINE_JOIN_BEVEL);
  g_assert_true (cairo_get_source (cr) == source);
  g_assert_false (cairo_has_current_point (cr));
  cairo_clip_extents (cr, &x1, &y1, &x2, &y2);
  g_assert_cmpfloat_with_epsilon (x2 - x1, WIDTH, 1e-9);
  g_assert_cmpfloat_with_epsilon (y2 - y1, HEIGHT, 1e-9);
}

static void
test_leaves_as_found (gconstpointer data)
{
  const Part *part = data;
  g_autoptr (BsResults) results = evaluate (16, BS_LAYUP_ON_EDGE);
  cairo_t *cr = image_new (WIDTH, HEIGHT);
  cairo_pattern_t *source = cairo_pattern_create_rgb (0.1, 0.2, 0.3);
  cairo_rectangle_int_t box;
  double dash = 2.0;
  BsScale section, face;

  bs_scale_fit (&section, &face, results->stack, WIDTH, HEIGHT, 13.0, 1.0);
  cairo_set_source (cr, source);
  cairo_translate (cr, 3.0, 4.0);
  cairo_set_line_width (cr, 7.0);
  cairo_set_dash (cr, &dash, 1, 0.0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_SQUARE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  part->draw (cr, results, part->draw == bs_draw_section_picture ? &section : &face,
              bs_palette_light ());
  assert_as_before (cr, source);
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  cairo_pattern_destroy (source);
  cairo_destroy (cr);
}

typedef struct
{
  const char *path;
  int n;
  gboolean is_unknown;
  BsLayup layup;
  gboolean has_ink;
} PlanRow;

static const PlanRow plan_rows[] = {
  { "/picture/plan/empty", 0, FALSE, BS_LAYUP_ON_EDGE, FALSE },
  { "/picture/plan/one", 1, FALSE, BS_LAYUP_ON_EDGE, TRUE },
  { "/picture/plan/60", 60, FALSE, BS_LAYUP_ON_EDGE, TRUE },
  { "/picture/plan/on-flat", 6, FALSE, BS_LAYUP_ON_FLAT, TRUE },
  { "/picture/plan/one-unknown", 1, TRUE, BS_LAYUP_ON_EDGE, FALSE },
  { "/picture/plan/5-unknown", 5, TRUE, BS_LAYUP_ON_EDGE, FALSE },
};

/* Whatever is in the plan: no warning (they abort here), no error of cairo, and nothing outside of
 * the area that bs_scale_fit () was given. */
static void
test_plan (gconstpointer data)
{
  const PlanRow *row = data;
  g_autoptr (BsPlan) plan
      = row->is_unknown ? scene_new_unknown_plan (row->n) : scene_new_plan (row->n, row->layup);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  cairo_t *cr = image_new (WIDTH + 40, HEIGHT + 40);
  cairo_rectangle_int_t box;
  BsScale section, face;

  bs_scale_fit (&section, &face, results->stack, WIDTH, HEIGHT, 13.0, 1.0);
  cairo_translate (cr, 20.0, 20.0);
  bs_draw_section_picture (cr, results, &section, bs_palette_light ());
  bs_draw_face_picture (cr, results, NULL, &face, bs_palette_light ());
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (image_count_ink (cr, &box) > 0, ==, row->has_ink);
  if (row->has_ink)
    {
      g_assert_cmpint (box.x, >=, 20);
      g_assert_cmpint (box.y, >=, 20);
      g_assert_cmpint (box.x + box.width, <=, WIDTH + 20);
      g_assert_cmpint (box.y + box.height, <=, HEIGHT + 20);
    }
  cairo_destroy (cr);
}

static void
test_same_each_time (void)
{
  g_autoptr (BsResults) results = evaluate (16, BS_LAYUP_ON_EDGE);
  cairo_t *crs[2];
  BsScale section, face;

  bs_scale_fit (&section, &face, results->stack, WIDTH, HEIGHT, 13.0, 1.0);
  for (int i = 0; i < 2; i++)
    {
      crs[i] = image_new (WIDTH, HEIGHT);
      bs_draw_section_picture (crs[i], results, &section, bs_palette_dark ());
      bs_draw_face_picture (crs[i], results, NULL, &face, bs_palette_dark ());
    }
  g_assert_cmpint (image_difference (crs[0], crs[1], FALSE), ==, 0);
  cairo_destroy (crs[0]);
  cairo_destroy (crs[1]);
}

/* One lamination of whole pixels, alone in the middle of a picture. */
#define END_W 80
#define END_H 120

static BsPlan *
new_single_plan (BsOrientation orientation, gboolean with_signs)
{
  BsPlan *plan = scene_new_plan (1, BS_LAYUP_ON_EDGE);
  BsLamination *lamination = bs_lamination_copy (g_ptr_array_index (plan->laminations, 0));

  lamination->thickness = 40.0;
  lamination->height = 60.0;
  lamination->length = 1000.0;
  lamination->taper = 0.0;
  lamination->pith_y = 12.0;
  lamination->pith_z = -41.0;
  if (!with_signs)
    {
      bs_text_set (&lamination->label, NULL);
      lamination->run_out_top = lamination->run_out_underside = 0;
    }
  bs_lamination_unref (g_ptr_array_index (plan->laminations, 0));
  g_ptr_array_index (plan->laminations, 0) = lamination;
  g_array_index (plan->order, BsPlacement, 0).orientation = orientation;
  g_array_index (plan->order, BsPlacement, 0).start = 0.0;
  return plan;
}

static const BsScale single_scale = {
  .per_mm_across = END_W / 40.0,
  .per_mm_along = 0.4,
  .hairline = 1.0,
  .text_size = 14.0,
};

static cairo_t *
draw_single (BsOrientation orientation, gboolean is_end, gboolean with_signs, BsMark marks,
             const BsPalette *palette)
{
  g_autoptr (BsPlan) plan = new_single_plan (orientation, with_signs);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  int height = is_end ? END_H : 400;
  cairo_t *cr = image_new (END_W + 20, height + 20);

  cairo_save (cr);
  cairo_translate (cr, 10.0, is_end ? 10.0 + height : 10.0);
  if (is_end)
    bs_draw_end (cr, &stack->placed[0], &single_scale, palette, marks);
  else
    bs_draw_face (cr, &stack->placed[0], NULL, &single_scale, palette, marks);
  cairo_restore (cr);
  return cr;
}

typedef struct
{
  const char *path;
  BsOrientation before, after;
  gboolean is_end;
} TurnRow;

/* A half turn over shows the end upside down, a half turn end for end shows the face the other way
 * round: the very same picture, turned. */
static const TurnRow turn_rows[] = {
  { "/picture/turn/end-over", BS_ORIENTATION_AS_MARKED, BS_ORIENTATION_OVER, TRUE },
  { "/picture/turn/end-over-swapped", BS_ORIENTATION_END_FOR_END, BS_ORIENTATION_OVER_AND_END,
    TRUE },
  { "/picture/turn/face-end-for-end", BS_ORIENTATION_AS_MARKED, BS_ORIENTATION_END_FOR_END, FALSE },
  { "/picture/turn/underside-end-for-end", BS_ORIENTATION_OVER, BS_ORIENTATION_OVER_AND_END,
    FALSE },
};

static void
test_turn (gconstpointer data)
{
  const TurnRow *row = data;
  cairo_t *before
      = draw_single (row->before, row->is_end, FALSE, BS_MARK_NONE, bs_palette_light ());
  cairo_t *after = draw_single (row->after, row->is_end, FALSE, BS_MARK_NONE, bs_palette_light ());

  /* edges of filled shapes round differently on the two sides of a pixel: a few levels of 255 */
  g_assert_cmpint (image_difference (before, after, TRUE), <=, 12);
  g_assert_cmpint (image_difference (before, after, FALSE), >, 60);
  cairo_destroy (before);
  cairo_destroy (after);
}

/* On paper all marks are black: they must differ by shape, on the end as on the face where they
 * show. */
static void
test_marks_without_colour (void)
{
  static const BsMark marks[]
      = { BS_MARK_NONE, BS_MARK_SELECTED, BS_MARK_HELD, BS_MARK_CAUTION, BS_MARK_STOP };
  cairo_t *pictures[G_N_ELEMENTS (marks)];

  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    pictures[i] = draw_single (BS_ORIENTATION_AS_MARKED, TRUE, TRUE, marks[i], bs_palette_paper ());
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    for (gsize j = 0; j < i; j++)
      g_assert_cmpint (image_difference (pictures[i], pictures[j], FALSE), >, 100);
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    cairo_destroy (pictures[i]);
}

/* Marks come from findings about the lamination or about its neighbour; notes leave none. */
static void
test_marks_from_findings (void)
{
  const BsFinding findings[] = {
    { .kind = BS_FINDING_HEAVY, .severity = BS_SEVERITY_STOP, .place = -1, .neighbour = -1 },
    { .kind = BS_FINDING_RUN_OUT, .severity = BS_SEVERITY_CAUTION, .place = 1, .neighbour = -1 },
    { .kind = BS_FINDING_MOISTURE_APART, .severity = BS_SEVERITY_STOP, .place = 1, .neighbour = 2 },
    { .kind = BS_FINDING_DEFECT_SHOWS, .severity = BS_SEVERITY_NOTE, .place = 3, .neighbour = -1 },
  };
  g_autoptr (GArray) array = g_array_new (FALSE, FALSE, sizeof (BsFinding));
  BsResults results = { .findings = array };

  g_array_append_vals (array, findings, G_N_ELEMENTS (findings));
  g_assert_cmpint (bs_marks_from_findings (&results, 0), ==, BS_MARK_NONE);
  g_assert_cmpint (bs_marks_from_findings (&results, 1), ==, BS_MARK_CAUTION | BS_MARK_STOP);
  g_assert_cmpint (bs_marks_from_findings (&results, 2), ==, BS_MARK_STOP);
  g_assert_cmpint (bs_marks_from_findings (&results, 3), ==, BS_MARK_NONE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autofree char *path = g_strconcat ("/picture/leaves-as-found/", parts[i].name, NULL);

      g_test_add_data_func (path, &parts[i], test_leaves_as_found);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (plan_rows); i++)
    g_test_add_data_func (plan_rows[i].path, &plan_rows[i], test_plan);
  for (gsize i = 0; i < G_N_ELEMENTS (turn_rows); i++)
    g_test_add_data_func (turn_rows[i].path, &turn_rows[i], test_turn);
  g_test_add_func ("/picture/same-each-time", test_same_each_time);
  g_test_add_func ("/picture/marks-without-colour", test_marks_without_colour);
  g_test_add_func ("/picture/marks-from-findings", test_marks_from_findings);
  return g_test_run ();
}
