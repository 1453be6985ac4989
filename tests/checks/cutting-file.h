/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"

/* A cutting problem with a known answer. */
typedef struct
{
  BsCutting cutting;
  BsCutStock *stock;
  BsCutPart *parts;
  BsCutDefect *defects;
  gint64 price_minor;
  double waste_area; /* mm2 */
  double score;      /* sum of squared lengths of offcuts, mm2 */
} CuttingFile;

/* One of tests/data, with prices in hundredths. Ends the program with a message when the file
 * cannot be read, like the others. */
CuttingFile *cutting_file_read (const char *name);

/* The folder that BROADSTAVE_BENCHMARKS names, or NULL after the case was skipped. */
const char *cutting_find_benchmarks (void);

/* An open one-dimensional instance as boards of price 1 that are all cut across: the price is the
 * number of boards. */
CuttingFile *cutting_row_read (const char *folder, const char *name);

/* An open two-dimensional one, "L W, n, then length width demand", likewise. */
CuttingFile *cutting_sheet_read (const char *folder, const char *name);

/* An order drawn at random: n_types of parts (20 mm to 150 mm wide, 300 mm to 1800 mm long),
 * n_parts in all, from n_stock sizes of boards (1.8 m to 4.2 m, 100 mm to 300 mm) at prices that go
 * with their area. A third of the boards have defects when asked for, and are single ones. */
CuttingFile *cutting_draw (guint64 seed, guint n_types, guint n_parts, guint n_stock,
                           gboolean has_defects);

/* A purchase drawn at random: 60 laminations of one size and 40 other parts of seven sizes, from
 * boards of three lengths in four widths at prices that go with their size. */
CuttingFile *cutting_draw_purchase (guint64 seed);

/* All numbers of a text file; the caller's to free. */
GArray *cutting_read_numbers (const char *folder, const char *kind, const char *name);

void cutting_file_free (CuttingFile *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (CuttingFile, cutting_file_free)
