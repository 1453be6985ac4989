/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/words.h"

/* Within one set no two names are alike, and none is missing. */
static void
assert_distinct (const char *const *names, int n)
{
  for (int i = 0; i < n; i++)
    {
      g_assert_cmpstr (names[i], !=, "");
      for (int k = 0; k < i; k++)
        g_assert_cmpstr (names[i], !=, names[k]);
    }
}

static void
test_distinct (void)
{
  const char *defects[BS_N_DEFECT_KINDS];
  const char *orientations[BS_N_ORIENTATIONS];
  const char *faces[BS_N_FACES];
  const char *severities[3];

  for (int i = 0; i < BS_N_DEFECT_KINDS; i++)
    defects[i] = bs_words_defect (i);
  for (int i = 0; i < BS_N_ORIENTATIONS; i++)
    orientations[i] = bs_words_orientation (i);
  for (int i = 0; i < BS_N_FACES; i++)
    faces[i] = bs_words_faces[i];
  for (int i = 0; i < 3; i++)
    severities[i] = bs_words_severity (i);

  assert_distinct (defects, BS_N_DEFECT_KINDS);
  assert_distinct (orientations, BS_N_ORIENTATIONS);
  assert_distinct (faces, BS_N_FACES);
  assert_distinct (severities, 3);
}

/* A finding's title never repeats another's: they stand in one list. */
static void
test_titles_distinct (void)
{
  const char *titles[BS_N_FINDING_KINDS];

  for (int i = 0; i < BS_N_FINDING_KINDS; i++)
    titles[i] = bs_words_finding_title (&(BsFinding){ .kind = i, .severity = BS_SEVERITY_STOP });
  assert_distinct (titles, BS_N_FINDING_KINDS);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/names/distinct", test_distinct);
  g_test_add_func ("/words/names/titles-distinct", test_titles_distinct);
  return g_test_run ();
}
