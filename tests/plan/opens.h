/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <string.h>

#include "plan/document.h"

/* What is left behind can be saved and opened again. */
static inline void
check_opens (BsPlan *plan)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bs_document_write (plan);
  g_autoptr (BsPlan) again = bs_document_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_cmpuint (again->cuts->len, ==, plan->cuts->len);
}
