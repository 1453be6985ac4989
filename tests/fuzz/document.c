/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* Whatever bytes a plan file holds: it is refused with a sentence, or it is opened whole, and then
 * it can be saved, opened again as the same plan, evaluated and reported. An ordinary test calls
 * this with the mutations of driver.c. With libFuzzer, in the build folder of a build by clang-14
 * with -Db_sanitize=address,undefined -Db_lundef=false:
 *
 *   clang-14 -g -fsanitize=fuzzer,address,undefined -I../src $(pkg-config --cflags json-glib-1.0) \
 *     ../tests/fuzz/document.c src/plan/libplan.a src/words/libwords.a src/core/libcore.a \
 *     $(pkg-config --libs json-glib-1.0 gio-2.0) -lm -o fuzz-document
 *   G_DEBUG=fatal-criticals G_SLICE=always-malloc ./fuzz-document corpus ../data/examples */

#include "fuzz.h"

#include "core/results.h"
#include "plan/document.h"
#include "plan/report.h"

#include <string.h>

static void
check_refusal (const GError *error)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == BS_DOCUMENT_ERROR);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_null (strchr (error->message, '\n'));
}

static void
check_plan (const BsPlan *plan)
{
  g_autofree char *text = bs_document_write (plan);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) again = bs_document_parse (text, strlen (text), &error);
  g_assert_no_error (error);

  g_autofree char *second = bs_document_write (again);
  g_assert_cmpstr (text, ==, second);

  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autofree char *report = bs_report_write (results, NULL);
  g_assert_nonnull (report);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) plan = bs_document_parse ((const char *)data, size, &error);

  if (plan == NULL)
    check_refusal (error);
  else
    check_plan (plan);
  return 0;
}
