/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* The sentences, in the person's language and units, that window, paper and report share. All
 * strings returned as char * are the caller's. */

/* Title (static), what was found with its reason, and what to do about it. */
const char *bs_words_finding_title (const BsFinding *finding);
char *bs_words_finding_reason (const BsFinding *finding, const BsResults *results);
char *bs_words_finding_remedy (const BsFinding *finding, const BsResults *results);
const char *bs_words_severity (BsSeverity severity);

/* A working, one line a term: "A = 0.216 m² area of one glue line (from the plan)"; for a tooltip,
 * a popover or the paper's appendix. */
char *bs_words_working (const BsWorking *working, BsUnitSystem units);

/* One value of a working: money in its currency, all else in the person's units. */
char *bs_words_value (const BsWorking *working, double value, BsQuantity quantity,
                      BsUnitSystem units);

/* One value of a working: money in its currency, the rest in the units. */
char *bs_words_value (const BsWorking *working, double value, BsQuantity quantity,
                      BsUnitSystem units);

const char *bs_words_defect (BsDefectKind kind);

/* The names to choose from, NULL-terminated: message ids in these contexts. */
#define BS_WORDS_DEFECT_CONTEXT "defect"
#define BS_WORDS_FACE_CONTEXT "face of a lamination"
extern const char *const bs_words_defects[];
extern const char *const bs_words_faces[];
#define BS_WORDS_BOARD_FACE_CONTEXT "face of a board"
extern const char *const bs_words_board_faces[];
const char *bs_words_board_face (BsFace face);
const char *bs_words_board_end (void);
const char *bs_words_orientation (BsOrientation orientation);

/* The usual cautions for this plan (adhesive, dust, lifting, clamps), NULL-terminated; defer to
 * data sheets, local rules and licensed practice. Free with g_strfreev. */
char **bs_words_cautions (const BsPlan *plan, const BsResults *results);

/* The one of them that is about the clamps as they are set; the caller's. */
char *bs_words_clamp_caution (const BsResults *results);

G_END_DECLS
