/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/finding.h"

G_BEGIN_DECLS

/* How grave a finding is, by the shape that also stands on the lamination: an octagon, a triangle,
 * or a ring for a note. In the text's colour; a word goes with it. */
#define BS_TYPE_SEVERITY_SIGN (bs_severity_sign_get_type ())
G_DECLARE_FINAL_TYPE (BsSeveritySign, bs_severity_sign, BS, SEVERITY_SIGN, GtkWidget)

void bs_severity_sign_show (BsSeveritySign *self, BsSeverity severity);

G_END_DECLS
