/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/lettering.h"

#include <math.h>

/* Letters stand where they belong and not on the nearest pixel, so that text is as wide on paper as
 * where it was measured; their edges are smoothed in greys, so that black text has no coloured
 * rims. */
static void
unhint (PangoLayout *layout)
{
  PangoContext *context = pango_layout_get_context (layout);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_layout_context_changed (layout);
}

PangoLayout *
bs_lettering_layout (cairo_t *cr, const char *text, const BsLettering *style)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_new ();
  PangoAttrList *attributes = pango_attr_list_new ();

  unhint (layout);
  pango_font_description_set_family_static (font, "Sans");
  pango_font_description_set_absolute_size (font, style->size * PANGO_SCALE);
  if (style->is_bold)
    pango_font_description_set_weight (font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);

  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);

  if (style->wrap > 0.0)
    {
      pango_layout_set_width (layout, (int)floor (style->wrap * PANGO_SCALE));
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
      pango_layout_set_alignment (layout, style->align);
    }
  pango_layout_set_text (layout, text, -1);
  return layout;
}

static void
get_size (PangoLayout *layout, double *width, double *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double)logical.width / PANGO_SCALE;
  *height = (double)logical.height / PANGO_SCALE;
}

void
bs_lettering_measure (cairo_t *cr, const char *text, const BsLettering *style, double *width,
                      double *height)
{
  g_autoptr (PangoLayout) layout = bs_lettering_layout (cr, text, style);

  get_size (layout, width, height);
}

void
bs_lettering_draw (cairo_t *cr, const char *text, const BsLettering *style, double x, double y,
                   double part_x, double part_y)
{
  g_autoptr (PangoLayout) layout = bs_lettering_layout (cr, text, style);
  double width, height;

  get_size (layout, &width, &height);
  if (style->wrap > 0.0)
    width = style->wrap;
  cairo_move_to (cr, x - part_x * width, y - part_y * height);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr);
}

double
bs_lettering_fit (cairo_t *cr, const char *text, const BsLettering *style, double width,
                  double least)
{
  double text_width, text_height, size;

  bs_lettering_measure (cr, text, style, &text_width, &text_height);
  size = text_width > width ? style->size * width / text_width : style->size;
  return size >= least ? size : 0.0;
}
