/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>

#include "core/pressure.h"
#include "core/results.h"
#include "words/boards.h"

G_BEGIN_DECLS

/* The parts of a report; each returns a new object or array. */
JsonArray *bs_report_findings (const BsResults *results, const GArray *photo_problems);
JsonObject *bs_report_workings (const BsResults *results);
JsonObject *bs_report_working (const BsWorking *working);
JsonObject *bs_report_pressing (const BsResults *results);

JsonObject *bs_report_flattening (const BsResults *results);

JsonObject *bs_report_movement (const BsResults *results);
JsonObject *bs_report_cost (const BsResults *results);
JsonArray *bs_report_woods (const BsResults *results);
JsonArray *bs_report_loads (const BsResults *results);
JsonArray *bs_report_boards (const BsResults *results);

/* Empty when the plan has no offers. */
JsonObject *bs_report_buying (const BsResults *results);

JsonObject *bs_report_cutting (const BsPlan *plan);
JsonObject *bs_report_schedule (const BsResults *results);

/* Id of the lamination at a place of the order, borrowed; NULL outside it. */
const char *bs_report_id_at (const BsResults *results, int place);

extern const char *const bs_severity_names[];

G_END_DECLS
