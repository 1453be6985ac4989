/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-options.h"

G_BEGIN_DECLS

/* What the files that list options share: cutting-contents.c lists what a slice may hold,
 * cutting-options.c puts slices together. */

/* What a slice may hold. */
typedef struct
{
  gint32 first; /* size of the slice along the first axis */
  gint64 value; /* if all of it is wanted */
  guint n;
  BsCutStrip strips[];
} BsCutContent;

/* One slice of an option. */
typedef struct
{
  gint32 from;
  guint content;
} BsCutStep;

/* Contents of slices of the same size that touch the same spots, in one group of sheets. */
typedef struct
{
  guint sheet; /* of a sheet with spots; else that of the group's first sheet */
  guint64 spots;
  gint32 first;
  GArray *contents; /* guint */
} BsCutShelf;

/* The work of listing all options. */
typedef struct
{
  BsCutOptions *out;
  const BsCutModel *model;
  BsCutOracle *oracle;
  const int *demand;
  const BsCutDuals *duals;
  GPtrArray *shelves; /* BsCutShelf */
  GHashTable *known;  /* key of stock and counts -> index of option + 1 */
  guint most_options, nodes_left;
  gboolean is_too_many;
  gboolean only_full;

  /* The sheet at hand. */
  guint sheet;
  gint64 cost;   /* price and rent, scaled */
  gint64 needed; /* value that a pattern must have */
  int *count;    /* of each type in the pattern so far */
  gint64 value;  /* of it, as far as it is wanted */
  int n_wanted;  /* parts in it that are wanted */
  GArray *path;  /* BsCutStep */

  /* The slice at hand. */
  const BsCutShelf *shelf;
  GArray *strips;
  int *in_slice;
} BsCutListing;

void bs_cut_shelf_free (gpointer shelf);

/* Size of a type along the first or the second axis of the sheet at hand. */
gint32 bs_cut_listing_size (const BsCutListing *self, guint type, gboolean is_first);

/* Whether the slice at hand has room for one more of a type at a place of the second axis. */
gboolean bs_cut_listing_may_hold (const BsCutListing *self, guint type, gint32 place);

/* Counts a step; FALSE when there were too many. */
gboolean bs_cut_listing_count (BsCutListing *self);

/* Files the strips at hand as a content of the shelf at hand. */
void bs_cut_listing_keep (BsCutListing *self);

/* The contents of slices of a size of the sheet at hand that touch some spots; listed when they are
 * asked for the first time. */
const BsCutShelf *bs_cut_listing_shelf (BsCutListing *self, guint64 spots, gint32 first);

G_END_DECLS
