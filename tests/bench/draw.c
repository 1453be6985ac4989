/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/median.h"
#include "draw/picture.h"
#include "draw/scene.h"
#include "draw/sheet.h"

/* Medians of drawing on 1600 x 1000 pixels in memory: the whole pictures; of one lamination, which
 * is what a canvas draws once and keeps; what has to be drawn anew while one is held; and the
 * paper. */

#define RUNS 15
#define WIDTH 1600
#define HEIGHT 1000

typedef struct
{
  BsResults *results;
  cairo_t *cr;
  BsScale section, face;
} Scene;

static void
draw_pictures (gpointer data)
{
  Scene *scene = data;
  bs_draw_section_picture (scene->cr, scene->results, &scene->section, bs_palette_light ());
  bs_draw_face_picture (scene->cr, scene->results, NULL, &scene->face, bs_palette_light ());
}

static void
draw_ends (gpointer data)
{
  Scene *scene = data;
  for (guint i = 0; i < scene->results->stack->n; i++)
    bs_draw_end (scene->cr, &scene->results->stack->placed[i], &scene->section, bs_palette_light (),
                 BS_MARK_NONE);
}

static void
draw_faces (gpointer data)
{
  Scene *scene = data;
  for (guint i = 0; i < scene->results->stack->n; i++)
    bs_draw_face (scene->cr, &scene->results->stack->placed[i], NULL, &scene->face,
                  bs_palette_light (), BS_MARK_NONE);
}

static void
draw_rest (gpointer data)
{
  Scene *scene = data;
  bs_draw_finished_faces (scene->cr, scene->results, &scene->section, bs_palette_light ());
  bs_draw_dimensions (scene->cr, scene->results, &scene->section, bs_palette_light ());
  bs_draw_surroundings (scene->cr, scene->results, &scene->face, bs_palette_light ());
  bs_draw_tape (scene->cr, scene->results, &scene->face, bs_palette_light ());
}

static void
make_sheet (gpointer data)
{
  Scene *scene = data;
  BsSheetOptions options = { .width = 770.0, .height = 523.0 };
  g_autoptr (BsSheet) sheet = bs_sheet_new (scene->results, &options);

  for (guint page = 0; page < bs_sheet_get_n_pages (sheet); page++)
    bs_sheet_draw_page (sheet, page, scene->cr);
}

static void
measure (int n)
{
  g_autoptr (BsPlan) plan = scene_new_plan (n, BS_LAYUP_ON_EDGE);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  Scene scene = { .results = results, .cr = cairo_create (surface) };

  bs_scale_fit (&scene.section, &scene.face, results->stack, WIDTH, HEIGHT, 13.0, 1.0);
  g_print ("%2d laminations: both pictures %.1f ms, one end %.3f ms, one face %.3f ms, "
           "all but the laminations %.2f ms, all pages of the diagram %.0f ms\n",
           n, bench_median_ms (draw_pictures, &scene, RUNS),
           bench_median_ms (draw_ends, &scene, RUNS) / n,
           bench_median_ms (draw_faces, &scene, RUNS) / n,
           bench_median_ms (draw_rest, &scene, RUNS), bench_median_ms (make_sheet, &scene, RUNS));
  cairo_destroy (scene.cr);
  cairo_surface_destroy (surface);
}

int
main (void)
{
  g_print ("drawing on %d x %d, medians of %d runs, %u processors\n", WIDTH, HEIGHT, RUNS,
           g_get_num_processors ());
  measure (5);
  measure (16);
  measure (60);
  return 0;
}
