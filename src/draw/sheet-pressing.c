/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>

#include "draw/lettering.h"
#include "draw/pressing.h"
#include "words/pressing.h"

/* Points. */
#define TEXT 9.0
#define UNDER_WORDS 6.0
#define CURVE 110.0

/* What is said over the picture; the caller's. */
static char *
describe (const BsPressure *pressure)
{
  g_autofree char *words = bs_words_pressing (pressure);

  if (pressure->press.problem.stack.model == BS_PRESS_MODEL_SQUEEZE)
    return g_steal_pointer (&words);
  /* Translators: %s is one or more whole sentences. */
  return g_strdup_printf (_ ("%s By the faster form of the model, which errs to the safe side; the "
                             "window shows the exact figures."),
                          words);
}

void
bs_sheet_draw_pressing_page (cairo_t *cr, const BsResults *results, const BsPressure *pressure,
                             double width, double height)
{
  const BsPalette *paper = bs_palette_paper ();
  BsLettering title = { .size = 11.0, .is_bold = TRUE };
  BsLettering plain = { .size = BS_SHEET_TEXT, .wrap = width };
  g_autofree char *words = describe (pressure);
  guint weakest = pressure->layout.pressures.weakest - pressure->press.first_course;
  double title_height, wide, words_height, legend;
  BsPressingScale scale;

  bs_lettering_measure (cr, _ ("Clamps and pressure"), &title, &wide, &title_height);
  bs_lettering_measure (cr, words, &plain, &wide, &words_height);
  bs_color_set (&paper->ink, cr);
  bs_lettering_draw (cr, _ ("Clamps and pressure"), &title, 0.0, 0.0, 0.0, 0.0);
  bs_lettering_draw (cr, words, &plain, 0.0, title_height, 0.0, 0.0);

  double top = title_height + words_height + UNDER_WORDS;
  /* The legend's height does not depend on the height of the slab. */
  bs_pressing_scale_fit (&scale, results, width, height, TEXT, BS_SHEET_HAIRLINE);
  legend = bs_draw_pressing_legend (cr, pressure, &scale, width, paper, FALSE);
  bs_pressing_scale_fit (&scale, results, width, height - top - legend - CURVE, TEXT,
                         BS_SHEET_HAIRLINE);
  cairo_save (cr);
  cairo_translate (cr, 0.0, top);
  bs_draw_pressing (cr, results, pressure, &scale, paper,
                    (BsPressingChoice){ .clamp = -1, .line = (int)weakest });
  cairo_translate (cr, 0.0, bs_pressing_scale_get_height (&scale));
  bs_draw_pressing_legend (cr, pressure, &scale, width, paper, TRUE);
  bs_draw_pressing_curve (cr, pressure, weakest, &scale, legend, CURVE, paper);
  cairo_restore (cr);
}
