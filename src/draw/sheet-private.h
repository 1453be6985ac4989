/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/flatten-spread.h"
#include "core/pressure.h"
#include "draw/cutting.h"
#include "draw/flow.h"
#include "draw/picture.h"
#include "draw/sheet.h"

G_BEGIN_DECLS

/* The parts of the diagram, each in an area whose top left corner is the origin. Points. */

#define BS_SHEET_HAIRLINE (0.18 * 72.0 / 25.4)
#define BS_SHEET_TEXT 10.0
#define BS_SHEET_LABEL 14.0
#define BS_SHEET_LABEL_LEAST 12.0 /* smaller ones are drawn once more, larger */

/* The first page: the figures, both pictures, the key. */
void bs_sheet_draw_front (cairo_t *cr, const BsResults *results, const BsFlattenOdds *odds,
                          GHashTable *photos, double width, double height);

/* TRUE when the labels of the first page had to be smaller than BS_SHEET_LABEL_LEAST. */
gboolean bs_sheet_front_is_small (const BsResults *results, const BsFlattenOdds *odds, double width,
                                  double height);

/* The section once more, in rows large enough for the labels. */
guint bs_sheet_count_section_pages (const BsResults *results, double width, double height);
void bs_sheet_draw_section_page (cairo_t *cr, const BsResults *results, double width, double height,
                                 guint page);

/* Heart sides, a row under a section from one lamination to before another. */
void bs_sheet_draw_hearts (cairo_t *cr, const BsResults *results, guint first, guint last,
                           const BsScale *scale, double left, double y);

/* The slab in its clamps with the pressure on every glue line, in greys, and the curve of the
 * weakest. Only for pressures that there are. */
void bs_sheet_draw_pressing_page (cairo_t *cr, const BsResults *results, const BsPressure *pressure,
                                  double width, double height);

/* A bold title, what there is to say about it, and a scale bar at the right. */
void bs_sheet_draw_caption (cairo_t *cr, const char *title, const char *text, double width,
                            double per_mm, BsUnitSystem units);

/* The presses over time, and what is done in each by the clock. Nothing without glue lines. */
void bs_sheet_add_schedule (BsFlow *flow, const BsSchedule *schedule);

/* What comes off each face, by which order of work, and how sure the thickness is. */
void bs_sheet_add_flattening (BsFlow *flow, const BsResults *results, const BsForecast *forecast);

/* Moisture, movement over the year with the slots that it asks for, money and weight. */
void bs_sheet_add_wood (BsFlow *flow, const BsResults *results);

/* The rack as a list, to compare with the pile. Only for a plan with boards. */
void bs_sheet_add_boards (BsFlow *flow, const BsPlan *plan);

/* Each board with its pieces and the passes of the saw, to mark out from; then all pieces. Only for
 * a plan with cuts. */
void bs_sheet_add_cutting (BsFlow *flow, const BsPlan *plan);

/* Boards with what is cut from them: all to one scale that the column has room for; those of
 * `boards` (BsSawnBoard) that have cuts count. */
BsCutStyle bs_sheet_make_cut_style (const BsFlow *flow, const GPtrArray *boards,
                                    BsUnitSystem units);
void bs_sheet_add_cut_board (BsFlow *flow, const BsPlan *plan, const BsSawnBoard *sawn,
                             const BsCutStyle *style);

/* What to take to the yard, what it is for, and how it is cut. */
void bs_sheet_add_buying (BsFlow *flow, const BsPurchase *purchase);

/* Everything in lists: order, clamps, findings, numbers, cautions; the workings. */
void bs_sheet_add_lists (BsFlow *flow, const BsResults *results, const GArray *photo_problems);
void bs_sheet_add_workings (BsFlow *flow, const BsResults *results);

G_END_DECLS
