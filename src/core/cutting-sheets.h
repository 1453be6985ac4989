/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-model.h"

G_BEGIN_DECLS

/* Adds the ways in which a kind of board can be cut, which the model has room for. FALSE when the
 * parts pinned to it allow none. */
gboolean bs_cut_model_add_sheets (BsCutModel *self, guint stock);

G_END_DECLS
