/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* A thing in a plan whose fields a person can type: the plan itself, a kind of clamp, a lamination
 * ... The pages describe their fields by offsets into such a record, so that one editor serves them
 * all. */
typedef struct
{
  /* The record of that id in a plan, or NULL when there is none (any more). */
  gconstpointer (*find) (const BsPlan *plan, const char *id);

  /* The same record in a copy that is still one's own, ready to be written to. */
  gpointer (*edit) (BsPlan *copy, const char *id);
} BsRecord;

extern const BsRecord bs_record_plan;     /* a BsPlan; the id does not matter */
extern const BsRecord bs_record_adhesive; /* a BsAdhesive; editing marks its figures as one's own */
extern const BsRecord bs_record_glue_price;   /* likewise; its figures stay the data sheet's */
extern const BsRecord bs_record_clamp;        /* a BsClampKind */
extern const BsRecord bs_record_caul;         /* a BsCaulKind */
extern const BsRecord bs_record_wood;         /* a BsWood; see below */
extern const BsRecord bs_record_offer;        /* a BsOffer */
extern const BsRecord bs_record_part;         /* a BsPart */
extern const BsRecord bs_record_placed_clamp; /* a BsPlacedClamp; id: its place, "0" the first */
extern const BsRecord bs_record_lamination;   /* a BsLamination */
extern const BsRecord bs_record_defect;       /* a BsDefect; id from bs_record_defect_id () */

extern const BsRecord bs_record_board;        /* a BsBoard */
extern const BsRecord bs_record_board_defect; /* likewise a BsDefect, of a board */

/* A wood that the plan does not use is found in the table of woods; editing it brings it into the
 * plan, and its source then says that some figures are the person's. */

/* The id of a defect of a lamination or board, for its record: the caller's to free. */
char *bs_record_dup_defect_id (const BsPlan *plan, const char *owner, guint index);

/* An id that none of the things has, each of which begins with its id (clamps, laminations ...):
 * the caller's to free. */
char *bs_record_make_id (const GPtrArray *things, const char *stem);

G_END_DECLS
