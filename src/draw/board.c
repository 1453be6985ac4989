/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/board.h"

#include <math.h>

#include "draw/defects.h"
#include "draw/grain.h"
#include "draw/lettering.h"
#include "draw/photo.h"
#include "words/words.h"

/* As they come up, rolled towards the person. */
static const BsFace faces[BS_N_FACES]
    = { BS_FACE_TOP, BS_FACE_LEFT, BS_FACE_UNDERSIDE, BS_FACE_RIGHT };

/* In heights of the text. */
#define NAME_ROOM 1.35 /* above each face */
#define GAP 0.45       /* below it */
#define END_ROOM 9.0   /* the end's width */
#define NAME_SIZE 0.9

/* Across runs up the picture where the front edge or the underside lies below. */
static gboolean
runs_up (BsFace face)
{
  return face == BS_FACE_TOP || face == BS_FACE_LEFT;
}

double
bs_board_scale_fit (BsBoardScale *self, const BsBoard *board, double width, double height,
                    double text_size, double hairline)
{
  double end = END_ROOM * text_size;
  double room = BS_N_FACES * (NAME_ROOM + GAP) * text_size;
  double across = 2.0 * (board->width + board->thickness);
  double y = 0.0;

  *self = (BsBoardScale){
    .left = end + 2.0 * text_size,
    .end_left = hairline,
    .hairline = hairline,
    .text_size = text_size,
  };
  self->per_mm = fmax (
      0.0, fmin ((width - self->left - 2.0 * hairline) / board->length, (height - room) / across));
  self->end_per_mm = fmin (end / board->width, (height - NAME_ROOM * text_size) / board->thickness);
  self->end_bottom = NAME_ROOM * text_size + self->end_per_mm * board->thickness;
  for (int i = 0; i < BS_N_FACES; i++)
    {
      y += NAME_ROOM * text_size;
      self->tops[faces[i]] = y;
      y += self->per_mm * bs_board_breadth (board, faces[i]) + GAP * text_size;
    }
  return fmax (y, self->end_bottom + hairline);
}

void
bs_board_scale_place (const BsBoardScale *self, const BsBoard *board, BsFace face, double x_from,
                      double x_to, double across_from, double across_to, cairo_rectangle_t *place)
{
  double from = runs_up (face) ? bs_board_breadth (board, face) - across_to : across_from;

  *place = (cairo_rectangle_t){
    .x = self->left + x_from * self->per_mm,
    .y = self->tops[face] + from * self->per_mm,
    .width = (x_to - x_from) * self->per_mm,
    .height = (across_to - across_from) * self->per_mm,
  };
}

gboolean
bs_board_scale_find_face (const BsBoardScale *self, const BsBoard *board, double device_x,
                          double device_y, BsFace *face)
{
  for (int i = 0; i < BS_N_FACES; i++)
    {
      cairo_rectangle_t place;

      bs_board_scale_place (self, board, faces[i], 0.0, board->length, 0.0,
                            bs_board_breadth (board, faces[i]), &place);
      if (device_x >= place.x && device_x <= place.x + place.width && device_y >= place.y
          && device_y <= place.y + place.height)
        {
          *face = faces[i];
          return TRUE;
        }
    }
  return FALSE;
}

void
bs_board_scale_to_mm (const BsBoardScale *self, const BsBoard *board, BsFace face, double device_x,
                      double device_y, double *x, double *across)
{
  double breadth = bs_board_breadth (board, face);
  double down = self->per_mm > 0.0 ? (device_y - self->tops[face]) / self->per_mm : 0.0;
  double along = self->per_mm > 0.0 ? (device_x - self->left) / self->per_mm : 0.0;

  *x = CLAMP (along, 0.0, board->length);
  *across = CLAMP (runs_up (face) ? breadth - down : down, 0.0, breadth);
}

/* The board as the lamination that its rings are drawn for: lying flat, or seen from an edge, with
 * that edge up. */
static BsLamination
as_lamination (const BsBoard *board, BsFace face)
{
  gboolean is_edge = face == BS_FACE_LEFT || face == BS_FACE_RIGHT;

  return (BsLamination){
    .id = board->id,
    .length = board->length,
    .thickness = is_edge ? board->thickness : board->width,
    .height = is_edge ? board->width : board->thickness,
    .pith_y = is_edge ? board->pith_z : board->pith_y,
    .pith_z = is_edge ? (face == BS_FACE_LEFT ? -board->pith_y : board->pith_y) : board->pith_z,
  };
}

/* From here on x of cr runs across the face from where its defects are measured, y along the grain.
 */
static void
turn_to_face (cairo_t *cr, const BsBoardScale *scale, const BsBoard *board, BsFace face)
{
  double breadth = scale->per_mm * bs_board_breadth (board, face);
  cairo_matrix_t turn;

  if (runs_up (face))
    cairo_matrix_init (&turn, 0.0, -1.0, 1.0, 0.0, scale->left, scale->tops[face] + breadth);
  else
    cairo_matrix_init (&turn, 0.0, 1.0, 1.0, 0.0, scale->left, scale->tops[face]);
  cairo_transform (cr, &turn);
}

static void
draw_rings (cairo_t *cr, const BsBoardLook *look, BsFace face, const BsBoardScale *scale,
            const BsColor *color)
{
  const BsLamination lamination = as_lamination (look->board, face);
  const BsGrainStyle style = {
    .per_mm_across = scale->per_mm,
    .per_mm_along = scale->per_mm,
    .hairline = scale->hairline,
    .color = *color,
  };
  BsGrain grain;

  bs_grain_init (&grain, &lamination);
  cairo_save (cr);
  cairo_translate (cr, 0.5 * scale->per_mm * lamination.thickness, 0.0);
  bs_grain_draw_face (&grain, cr, face == BS_FACE_UNDERSIDE ? BS_FACE_UNDERSIDE : BS_FACE_TOP,
                      &style);
  cairo_restore (cr);
}

static void
draw_defects (cairo_t *cr, const BsBoard *board, BsFace face, const BsBoardScale *scale,
              const BsColor *color)
{
  for (guint i = 0; i < board->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (board->defects, BsDefect, i);

      if (defect->face == face)
        bs_defect_draw (cr, defect->kind, defect->severity, scale->per_mm * defect->across_from,
                        scale->per_mm * defect->x_from,
                        scale->per_mm * (defect->across_to - defect->across_from),
                        scale->per_mm * (defect->x_to - defect->x_from), scale->hairline, color);
    }
}

static void
outline (cairo_t *cr, const cairo_rectangle_t *place, const BsBoardScale *scale,
         const BsPalette *palette)
{
  cairo_rectangle (cr, place->x, place->y, place->width, place->height);
  bs_color_set (&palette->edge, cr);
  cairo_set_line_width (cr, scale->hairline);
  cairo_stroke (cr);
}

void
bs_draw_board_face (cairo_t *cr, const BsBoardLook *look, BsFace face, const BsBoardScale *scale,
                    const BsPalette *palette)
{
  const BsBoard *board = look->board;
  BsColor tint = bs_palette_wood (palette, look->wood, NAN);
  BsColor grain = bs_palette_grain (palette, look->wood, NAN);
  BsColor text = bs_palette_on_wood (palette, look->wood, NAN);
  cairo_surface_t *photo = face == BS_FACE_TOP         ? look->top
                           : face == BS_FACE_UNDERSIDE ? look->under
                                                       : NULL;
  cairo_rectangle_t place;

  bs_board_scale_place (scale, board, face, 0.0, board->length, 0.0, bs_board_breadth (board, face),
                        &place);
  if (!(place.width > 0.0 && place.height > 0.0 && isfinite (place.x + place.y)))
    return;
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_save (cr);
  cairo_rectangle (cr, place.x, place.y, place.width, place.height);
  cairo_clip (cr);
  bs_color_set (&tint, cr);
  cairo_paint (cr);
  if (photo != NULL)
    bs_photo_draw (cr, photo, &BS_PHOTO_WHOLE, place.x, place.y, place.width, place.height);
  turn_to_face (cr, scale, board, face);
  if (photo == NULL)
    draw_rings (cr, look, face, scale, &grain);
  draw_defects (cr, board, face, scale, &text);
  cairo_restore (cr);
  outline (cr, &place, scale, palette);
  cairo_restore (cr);
}

void
bs_draw_board_end (cairo_t *cr, const BsBoardLook *look, const BsBoardScale *scale,
                   const BsPalette *palette)
{
  const BsLamination lamination = as_lamination (look->board, BS_FACE_TOP);
  BsColor tint = bs_palette_wood (palette, look->wood, NAN);
  const BsGrainStyle style = {
    .per_mm_across = scale->end_per_mm,
    .per_mm_along = scale->end_per_mm,
    .hairline = scale->hairline,
    .color = bs_palette_grain (palette, look->wood, NAN),
  };
  double height = scale->end_per_mm * look->board->thickness;
  const cairo_rectangle_t place = {
    .x = scale->end_left,
    .y = scale->end_bottom - height,
    .width = scale->end_per_mm * look->board->width,
    .height = height,
  };
  BsGrain grain;

  if (!(place.width > 0.0 && place.height > 0.0))
    return;
  bs_grain_init (&grain, &lamination);
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_save (cr);
  cairo_rectangle (cr, place.x, place.y, place.width, place.height);
  cairo_clip (cr);
  bs_color_set (&tint, cr);
  cairo_paint (cr);
  cairo_translate (cr, place.x + 0.5 * place.width, place.y + 0.5 * place.height);
  bs_grain_draw_end (&grain, cr, &style);
  cairo_restore (cr);
  outline (cr, &place, scale, palette);
  cairo_restore (cr);
}

static void
draw_name (cairo_t *cr, const char *name, double x, double y, const BsBoardScale *scale)
{
  BsLettering style = { .size = NAME_SIZE * scale->text_size };

  bs_lettering_draw (cr, name, &style, x, y - 0.15 * scale->text_size, 0.0, 1.0);
}

void
bs_draw_board (cairo_t *cr, const BsBoardLook *look, const BsBoardScale *scale,
               const BsPalette *palette)
{
  for (int i = 0; i < BS_N_FACES; i++)
    bs_draw_board_face (cr, look, faces[i], scale, palette);
  bs_draw_board_end (cr, look, scale, palette);

  cairo_save (cr);
  bs_color_set (&palette->faint, cr);
  for (int i = 0; i < BS_N_FACES; i++)
    draw_name (cr, bs_words_board_face (faces[i]), scale->left, scale->tops[faces[i]], scale);
  draw_name (cr, bs_words_board_end (), scale->end_left,
             scale->end_bottom - scale->end_per_mm * look->board->thickness, scale);
  cairo_restore (cr);
}
