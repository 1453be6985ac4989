/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* Pictures for people to look at: `draw-gallery FOLDER` draws every example, and invented slabs of
 * 1, 5, 16 and 60 laminations, as on the screen, light and dark, and each page of their diagrams,
 * as PNG files. Without a folder they are drawn and thrown away, which is a test that all of them
 * can be. */
#include <glib/gstdio.h>

#include "core/wood-compare.h"
#include "draw/cup-chart.h"
#include "draw/hardness-chart.h"
#include "draw/moisture-chart.h"
#include "draw/odds.h"
#include "core/sawing-job.h"
#include "draw/cutting.h"
#include "draw/pressing.h"
#include "draw/picture.h"
#include "draw/profile.h"
#include "draw/removal.h"
#include "draw/season-chart.h"
#include "draw/sheet.h"
#include "draw/timeline.h"
#include "image.h"
#include "plan/document.h"
#include "plan/edits.h"
#include "plan/tables.h"
#include "scene.h"
#include "words/table-names.h"

#include <math.h>

#define WIDTH 1200
#define HEIGHT 900
#define PAPER_ZOOM 1.5 /* pixels a point */

static const char *folder;

static void
keep (cairo_t *cr, const char *plan, const char *picture)
{
  cairo_rectangle_int_t box;

  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  if (folder != NULL)
    {
      g_autofree char *name = g_strdup_printf ("%s-%s.png", plan, picture);
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_assert_cmpint (cairo_surface_write_to_png (cairo_get_target (cr), path), ==,
                       CAIRO_STATUS_SUCCESS);
    }
  cairo_destroy (cr);
}

static void
draw_screen (const BsResults *results, const char *plan, const char *picture,
             const BsPalette *palette)
{
  cairo_t *cr = image_new (WIDTH, HEIGHT);
  BsScale section, face;

  bs_color_set (&palette->ground, cr);
  cairo_paint (cr);
  bs_scale_fit (&section, &face, results->stack, WIDTH, HEIGHT, 13.0, 1.0);
  bs_draw_section_picture (cr, results, &section, palette);
  bs_draw_face_picture (cr, results, NULL, &face, palette);
  keep (cr, plan, picture);
}

/* The charts of the wood, as wide as the window's page. */
static void
draw_charts (const BsResults *results, const char *plan, const char *picture,
             const BsPalette *palette)
{
  const BsChart chart = { .width = 780.0, .text_size = 13.0, .hairline = 1.0, .palette = palette };
  const double heights[]
      = { bs_moisture_chart_get_height (&chart), bs_season_chart_get_height (results, &chart),
          bs_cup_chart_get_height (results, &chart) };
  void (*const draw[]) (cairo_t *, const BsResults *, const BsChart *)
      = { bs_draw_moisture_chart, bs_draw_season_chart, bs_draw_cup_chart };
  cairo_t *cr = image_new (820, 820);

  bs_color_set (&palette->ground, cr);
  cairo_paint (cr);
  cairo_translate (cr, 20.0, 20.0);
  for (gsize i = 0; i < G_N_ELEMENTS (draw); i++)
    {
      draw[i](cr, results, &chart);
      cairo_translate (cr, 0.0, heights[i] + 20.0);
    }
  keep (cr, plan, picture);
}

/* The place of flattening, as wide as the window's page. */
static void
draw_flattening (const BsResults *results, const char *plan, const char *picture,
                 const BsPalette *palette)
{
  const BsStack *stack = results->stack;
  g_autoptr (BsFlattenMap) map
      = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, BS_REMOVAL_COLUMNS, BS_REMOVAL_ROWS);
  const BsFlattenSpread spread = bs_flatten_spread_of (stack->plan);
  const BsFlattenOdds odds = bs_flatten_odds (stack, &spread);
  BsRemovalScale show_face, underside;
  cairo_t *cr = image_new (820, 1000);
  double height = bs_removal_fit (&show_face, &underside, stack, 780.0, 520.0, 13.0, 1.0);

  bs_color_set (&palette->ground, cr);
  cairo_paint (cr);
  cairo_translate (cr, 20.0, 20.0);
  bs_draw_removal (cr, map, stack, TRUE, &show_face, NULL, palette);
  bs_draw_removal (cr, map, stack, FALSE, &underside, NULL, palette);
  cairo_translate (cr, 0.0, height + 10.0);
  bs_draw_removal_legend (cr, map, stack->plan->units, 360.0, 13.0, 1.0, palette);
  cairo_translate (cr, 0.0, 40.0);
  bs_draw_profile (cr, map, stack, BS_PROFILE_ACROSS, 0.5 * stack->length, 780.0, 13.0, 1.0,
                   palette);
  cairo_translate (cr, 0.0, BS_PROFILE_HEIGHT * 13.0);
  bs_draw_profile (cr, map, stack, BS_PROFILE_ALONG, 0.5 * stack->width, 780.0, 13.0, 1.0, palette);
  cairo_translate (cr, 0.0, BS_PROFILE_HEIGHT * 13.0);
  bs_draw_odds (cr, &odds, stack->plan->slab.thickness, stack->plan->units, 360.0, 13.0, 1.0,
                palette);
  keep (cr, plan, picture);
}

static int
compare_marks (gconstpointer a, gconstpointer b)
{
  const double first = ((const BsHardnessMark *)a)->hardness_n;
  const double second = ((const BsHardnessMark *)b)->hardness_n;

  return (first > second) - (first < second);
}

/* Every wood of the table, as an empty plan would have it. */
static void
test_hardness (gconstpointer data)
{
  const int width = GPOINTER_TO_INT (data);
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  const BsWoodWish wish = bs_wood_wish_of (stack);
  const GPtrArray *woods = bs_tables_get_woods ();
  g_autoptr (GArray) marks = g_array_new (FALSE, FALSE, sizeof (BsHardnessMark));
  g_autofree char *picture = g_strdup_printf ("hardness-%d", width);
  const BsChart chart
      = { .width = width, .text_size = 13.0, .hairline = 1.0, .palette = bs_palette_light () };
  cairo_t *cr = image_new (width + 40, (int)bs_hardness_chart_get_height (&chart) + 40);

  for (guint i = 0; i < woods->len; i++)
    {
      const BsWoodCard card = bs_wood_compare (woods->pdata[i], &wish, NAN);
      const BsHardnessMark mark = { bs_words_wood (card.wood), card.hardness_n,
                                    card.is_hardness_estimated, card.unfit == 0, i == 20 };
      g_array_append_val (marks, mark);
    }
  g_array_sort (marks, compare_marks);
  const BsHardnessScale scale = { (const BsHardnessMark *)(gpointer)marks->data,
                                  marks->len,
                                  wish.hardness_low_n,
                                  wish.hardness_high_n,
                                  wish.is_hardness_usual,
                                  plan->units };
  bs_color_set (&chart.palette->ground, cr);
  cairo_paint (cr);
  cairo_translate (cr, 20.0, 20.0);
  bs_draw_hardness_chart (cr, &scale, &chart);
  keep (cr, "woods", picture);
}

/* Of each way there is to press the slab. */
static void
draw_timelines (const BsPlan *plan, const char *name, const BsPalette *palette, const char *look)
{
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
  const BsStagesPlan *ways[3] = { schedule->own };

  if (schedule->stages != NULL)
    {
      ways[1] = schedule->stages->shortest;
      ways[2] = schedule->stages->balanced;
    }
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      BsTimeline timeline = { schedule, ways[i], WIDTH, 13.0, 1.0, palette };
      g_autofree char *picture = g_strdup_printf ("timeline-%u-%s", i, look);

      if (ways[i] == NULL)
        continue;
      cairo_t *cr = image_new (WIDTH, (int)bs_timeline_get_height (&timeline));
      bs_color_set (&palette->ground, cr);
      cairo_paint (cr);
      bs_timeline_draw (&timeline, cr);
      keep (cr, name, picture);
    }
}

static void
draw_pages (BsResults *results, const char *plan)
{
  BsSheetOptions options = { .width = 770.0, .height = 523.0, .with_workings = TRUE };
  g_autoptr (BsSheet) sheet = bs_sheet_new (results, &options);

  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    {
      cairo_t *cr = image_new ((int)(842.0 * PAPER_ZOOM), (int)(595.0 * PAPER_ZOOM));
      g_autofree char *picture = g_strdup_printf ("page-%02u", page + 1);

      cairo_scale (cr, PAPER_ZOOM, PAPER_ZOOM);
      cairo_translate (cr, 36.0, 36.0);
      bs_sheet_draw_page (sheet, page, cr);
      keep (cr, plan, picture);
    }
}

/* The clamps as they are set, with the pressure on every glue line. */
static void
draw_clamping (const BsResults *results, const char *plan, const char *picture,
               const BsPalette *palette)
{
  g_autoptr (BsPressure) pressure = bs_pressure_new_quick (results->stack->plan);
  cairo_t *cr = image_new (WIDTH, HEIGHT);
  BsPressingScale scale;

  bs_color_set (&palette->ground, cr);
  cairo_paint (cr);
  bs_pressing_scale_fit (&scale, results, WIDTH, 520.0, 13.0, 1.0);
  bs_draw_pressing (cr, results, pressure, &scale, palette, (BsPressingChoice){ 1, 0 });
  if (bs_pressure_get_n_lines (pressure) > 0)
    {
      double top = bs_pressing_scale_get_height (&scale);

      cairo_translate (cr, 0.0, top);
      top = bs_draw_pressing_legend (cr, pressure, &scale, WIDTH, palette, TRUE);
      bs_draw_pressing_curve (cr, pressure, 0, &scale, top, 170.0, palette);
    }
  keep (cr, plan, picture);
}

static void
draw_plan (const BsPlan *plan, const char *name)
{
  g_autoptr (BsResults) results = bs_evaluate (plan);

  draw_screen (results, name, "light", bs_palette_light ());
  draw_screen (results, name, "dark", bs_palette_dark ());
  draw_charts (results, name, "charts", bs_palette_light ());
  draw_clamping (results, name, "clamping-light", bs_palette_light ());
  draw_clamping (results, name, "clamping-dark", bs_palette_dark ());
  draw_timelines (plan, name, bs_palette_light (), "light");
  draw_timelines (plan, name, bs_palette_dark (), "dark");
  draw_flattening (results, name, "flattening-light", bs_palette_light ());
  draw_flattening (results, name, "flattening-dark", bs_palette_dark ());
  draw_pages (results, name);
}

static void
test_example (gconstpointer path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) plan = bs_document_load (path, &error);
  g_autofree char *name = g_path_get_basename (path);

  g_assert_no_error (error);
  draw_plan (plan, name);
}

static void
test_scene (gconstpointer n)
{
  g_autoptr (BsPlan) plan = scene_new_plan (GPOINTER_TO_INT (n), BS_LAYUP_ON_EDGE);
  g_autofree char *name = g_strdup_printf ("scene-%02d", GPOINTER_TO_INT (n));

  draw_plan (plan, name);
}

static void
test_scene_on_flat (void)
{
  g_autoptr (BsPlan) plan = scene_new_plan (7, BS_LAYUP_ON_FLAT);

  draw_plan (plan, "scene-on-flat");
}

/* The boards of a plan that is still to be cut. */
static void
draw_boards (const BsPlan *plan, const char *picture, const BsPalette *palette)
{
  const BsCutStyle style
      = { .per_mm = 0.26, .hairline = 1.0, .text_size = 12.0, .palette = palette };
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  cairo_t *cr = image_new (WIDTH, HEIGHT);

  bs_color_set (&palette->ground, cr);
  cairo_paint (cr);
  cairo_translate (cr, 30.0, 20.0);
  for (guint i = 0; i < rack->boards->len; i++)
    {
      const BsSawnBoard *sawn = rack->boards->pdata[i];

      bs_draw_cut_board (cr, plan, sawn, &style);
      cairo_translate (cr, 0.0, sawn->board->width * style.per_mm + 24.0);
    }
  keep (cr, "cutting", picture);
}

static void
test_cutting (void)
{
  const BsSawEffort effort = { .is_quick = TRUE };
  g_autofree char *path = g_build_filename (g_getenv ("BROADSTAVE_SOURCE"), "data", "examples",
                                            "school-counter.broadstave", NULL);
  g_autoptr (BsPlan) plan = bs_document_load (path, NULL);
  g_autoptr (BsSawPlan) found = bs_saw_solve (plan, &effort, NULL);
  g_autoptr (BsPlan) cut
      = bs_edit_set_cuts (plan, (const BsCut *)found->cuts->data, found->cuts->len);
  g_autoptr (BsResults) results = bs_evaluate (cut);

  draw_boards (cut, "light", bs_palette_light ());
  draw_boards (cut, "dark", bs_palette_dark ());
  draw_pages (results, "cutting");
}

static void
add_examples (void)
{
  g_autofree char *examples
      = g_build_filename (g_getenv ("BROADSTAVE_SOURCE"), "data", "examples", NULL);
  g_autoptr (GDir) dir = g_dir_open (examples, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *test = g_strconcat ("/gallery/", name, NULL);

      if (g_str_has_suffix (name, ".broadstave"))
        g_test_add_data_func_full (test, g_build_filename (examples, name, NULL), test_example,
                                   g_free);
    }
}

int
main (int argc, char **argv)
{
  static const int sizes[] = { 1, 5, 16, 60 };

  g_test_init (&argc, &argv, NULL);
  folder = argc > 1 ? argv[1] : NULL;
  g_assert_true (folder == NULL || g_mkdir_with_parents (folder, 0755) == 0);
  add_examples ();
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autofree char *test = g_strdup_printf ("/gallery/scene-%d", sizes[i]);

      g_test_add_data_func (test, GINT_TO_POINTER (sizes[i]), test_scene);
    }
  g_test_add_data_func ("/gallery/hardness", GINT_TO_POINTER (780), test_hardness);
  g_test_add_data_func ("/gallery/hardness-wide", GINT_TO_POINTER (1150), test_hardness);
  g_test_add_data_func ("/gallery/hardness-narrow", GINT_TO_POINTER (420), test_hardness);
  g_test_add_func ("/gallery/scene-on-flat", test_scene_on_flat);
  g_test_add_func ("/gallery/cutting", test_cutting);
  return g_test_run ();
}
