/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/purchase.h"
#include "core/forecast.h"
#include "core/results.h"
#include "core/schedule.h"
#include "words/boards.h"

G_BEGIN_DECLS

/* What follows from the results' plan and takes time: read while the sheet is made. What is NULL is
 * worked out by its quickest form. */
typedef struct
{
  const BsForecast *forecast;
  const BsSchedule *schedule;
  const BsPurchase *purchase;
  GHashTable
      *photos; /* cairo_surface_t by the path that the plan has; the sheet keeps a reference */
  GArray *photo_problems; /* BsPhotoProblem */
} BsSheetStudies;

/* The glue-up diagram on paper: what hangs beside the clamps. Sizes in points (1/72 in); the
 * printable area is what the pages are laid out for. */
typedef struct
{
  double width, height;   /* printable area */
  gboolean with_workings; /* an appendix that shows how each number came about */
  BsSheetStudies studies;
} BsSheetOptions;

typedef struct _BsSheet BsSheet;

BsSheet *bs_sheet_new (BsResults *results, const BsSheetOptions *options);
void bs_sheet_free (BsSheet *self);
guint bs_sheet_get_n_pages (const BsSheet *self);

/* Draws one page with its top left corner at the origin; black on white. */
void bs_sheet_draw_page (const BsSheet *self, guint page, cairo_t *cr);

#define BS_SHEET_ERROR (bs_sheet_error_quark ())
GQuark bs_sheet_error_quark (void);

typedef enum
{
  BS_SHEET_ERROR_ENDING, /* the name tells no kind of file */
  BS_SHEET_ERROR_WRITE,
} BsSheetError;

/* The diagram as a file: PDF (all pages), SVG or PNG (the first page), by the name's ending. A4
 * unless letter is asked for; schedule as in the options. The same plan gives the same bytes. */
gboolean bs_sheet_export (BsResults *results, const BsSheetStudies *studies, const char *filename,
                          gboolean letter, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsSheet, bs_sheet_free)

G_END_DECLS
