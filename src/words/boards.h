/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/board-forecast.h"

G_BEGIN_DECLS

/* Sentences about one board of the rack. Texts are the caller's. */

/* "2 lengths of 3 strips, each 64 mm wide"; what a board that is too small counts as. */
char *bs_words_board_pieces (const BsBoardForecast *forecast, BsUnitSystem units);

/* "8 boards: 55.20 bd ft, 0.130 m³. Prices together: 413.00 EUR." */
char *bs_words_boards_sum (const GPtrArray *boards, const char *currency);

/* What to heed before it is milled, and what was not measured; NULL-terminated. Free with
 * g_strfreev. */
char **bs_words_board_cautions (const BsBoardForecast *forecast, const BsPlan *plan);

/* A photo that cannot be shown: of which board, and why, a sentence. */
typedef struct
{
  const BsBoard *board;
  char *reason;
} BsPhotoProblem;

/* The finding that a photo of a board is missing or cannot be read; it is told by whoever looks at
 * the files. The problem is what the system says of the file. */
char *bs_words_photo_title (const BsBoard *board);
char *bs_words_photo_reason (const char *path, const char *problem);
const char *bs_words_photo_remedy (void);

G_END_DECLS
