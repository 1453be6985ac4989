/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/schedule-page.h"

#include "core/packs.h"

#include "app/packs-editor.h"
#include "app/schedule-choices.h"
#include "desk.h"
#include "shops.h"

typedef struct
{
  BsWindow *window;
  BsSession *session;
  GtkWidget *page;
} Scene;

static gboolean
is_done (gpointer session)
{
  return bs_study_is_current (bs_session_get_study (session, &bs_study_schedule));
}

/* The place by itself, for one plan, once it is worked out. */
static Scene
scene_new (BsPlan *plan)
{
  Scene scene = { .window = desk_open () };

  scene.session = bs_window_get_session (scene.window);
  if (plan != NULL)
    bs_session_open (scene.session, plan);
  scene.page = g_object_ref_sink (bs_schedule_page_new (scene.session));
  desk_wait (is_done, scene.session);
  return scene;
}

static void
scene_close (Scene *self)
{
  g_clear_object (&self->page);
  desk_close (self->window);
}

/* The first widget below one that shows a text and can be seen. */
static GtkWidget *
find_text (GtkWidget *below, const char *text)
{
  if (!gtk_widget_get_visible (below))
    return NULL;
  if (GTK_IS_LABEL (below) && g_str_equal (gtk_label_get_text (GTK_LABEL (below)), text))
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_text (child, text);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
click (Scene *self, const char *text)
{
  GtkWidget *label = find_text (self->page, text);

  g_assert_nonnull (label);
  g_signal_emit_by_name (gtk_widget_get_ancestor (label, GTK_TYPE_BUTTON), "clicked");
}

static GArray *
get_packs (Scene *self)
{
  return bs_session_get_plan (self->session)->packs;
}

static void
test_words (void)
{
  Scene scene = scene_new (NULL); /* the first example, whose 16 laminations go in one press */

  g_assert_nonnull (find_text (scene.page, "Press 1: A1 to H2"));
  g_assert_nonnull (find_text (scene.page, "Nothing shorter exists: the fewest rounds, and among "
                                           "those the least time."));
  g_assert_null (find_text (scene.page, "Use these packs"));
  g_assert_null (find_text (scene.page, "Any one of these would make it possible:"));
  scene_close (&scene);
}

static void
test_nothing_to_glue (void)
{
  g_autoptr (BsPlan) single = slab_new (1, 1000.0, 40.0, 60.0);
  Scene scene = scene_new (single);

  g_assert_nonnull (
      find_text (scene.page, "A schedule needs at least two laminations with a size in the slab."));
  scene_close (&scene);
}

/* What is of the plan before stays to be read, but dimmed and not to be used. */
static void
test_stale (void)
{
  Scene scene = scene_new (NULL);
  g_autoptr (BsPlan) other = shop_new_perfect ();
  GtkWidget *press = find_text (scene.page, "Press 1: A1 to H2");

  g_assert_true (gtk_widget_is_sensitive (press));
  bs_session_open (scene.session, other);
  g_assert_true (find_text (scene.page, "Press 1: A1 to H2") == press);
  g_assert_false (gtk_widget_is_sensitive (press));
  desk_wait (is_done, scene.session);
  press = find_text (scene.page, "Press 1: 1 to 8");
  g_assert_nonnull (press);
  g_assert_true (gtk_widget_is_sensitive (press));
  scene_close (&scene);
}

/* Taking over what is proposed is one step, and is then the person's own. */
static void
test_use_proposed (void)
{
  g_autoptr (BsPlan) plan = shop_new_hasty ();
  Scene scene = scene_new (plan);

  click (&scene, "Use these packs");
  g_assert_cmpuint (get_packs (&scene)->len, >=, 1);
  desk_wait (is_done, scene.session);
  g_assert_nonnull (find_text (scene.page, "Your packs"));
  g_assert_null (find_text (scene.page, "Fewest rounds, then least time"));
  g_assert_null (find_text (scene.page, "Use these packs"));

  bs_history_undo (bs_session_get_history (scene.session));
  g_assert_cmpuint (get_packs (&scene)->len, ==, 0);
  g_assert_false (bs_history_can_undo (bs_session_get_history (scene.session)));
  desk_wait (is_done, scene.session);
  scene_close (&scene);
}

/* Of two ways the other one is looked at; nothing is changed by that. */
static void
test_look_at_other (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  const BsPack pack = { 0, 4 };
  Scene scene;

  g_array_append_val (plan->packs, pack);
  scene = scene_new (plan);
  g_assert_nonnull (find_text (scene.page, "Press 1, round 1: 1 to 4"));
  gtk_check_button_set_active (
      GTK_CHECK_BUTTON (gtk_widget_get_ancestor (
          find_text (scene.page, "Fewest rounds, then least time"), GTK_TYPE_CHECK_BUTTON)),
      TRUE);
  g_assert_nonnull (find_text (scene.page, "Press 1: 1 to 8"));
  g_assert_cmpuint (get_packs (&scene)->len, ==, 1);
  click (&scene, "Use these packs");
  g_assert_cmpuint (get_packs (&scene)->len, ==, 0);
  desk_wait (is_done, scene.session);
  scene_close (&scene);
}

static void
test_make_and_take_apart (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  Scene scene = scene_new (plan);
  GtkDropDown *first = GTK_DROP_DOWN (desk_find (scene.page, GTK_TYPE_DROP_DOWN));
  GtkSpinButton *count = GTK_SPIN_BUTTON (desk_find (scene.page, GTK_TYPE_SPIN_BUTTON));
  const BsPack *pack;

  gtk_drop_down_set_selected (first, 2);
  gtk_spin_button_set_value (count, 99.0);
  g_assert_cmpint (gtk_spin_button_get_value_as_int (count), ==, 6); /* 3 to 8 */
  gtk_spin_button_set_value (count, 3.0);
  click (&scene, "Make a pack");
  g_assert_cmpuint (get_packs (&scene)->len, ==, 1);
  g_assert_nonnull (find_text (scene.page, "3 to 5: 3 laminations"));

  /* One that overlaps takes its place; one beside it does not. */
  gtk_drop_down_set_selected (first, 4);
  gtk_spin_button_set_value (count, 2.0);
  click (&scene, "Make a pack");
  g_assert_cmpuint (get_packs (&scene)->len, ==, 1);
  gtk_drop_down_set_selected (first, 0);
  click (&scene, "Make a pack");
  g_assert_cmpuint (get_packs (&scene)->len, ==, 2);
  pack = &g_array_index (get_packs (&scene), BsPack, 0);
  g_assert_cmpint (pack->first, ==, 0);

  /* What was made is what is looked at. */
  desk_wait (is_done, scene.session);
  g_assert_nonnull (find_text (scene.page, "Press 1, round 1: 1 and 2"));

  click (&scene, "Take apart");
  g_assert_cmpuint (get_packs (&scene)->len, ==, 1);
  pack = &g_array_index (get_packs (&scene), BsPack, 0);
  g_assert_cmpint (pack->first, ==, 4);
  desk_wait (is_done, scene.session);
  scene_close (&scene);
}

/* A pack around another one: both stay, and each can be taken apart by itself. */
static void
test_nest (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  const BsPack inner = { 1, 2 }, outer = { 0, 4 };
  Scene scene;

  g_array_append_val (plan->packs, inner);
  scene = scene_new (plan);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (desk_find (scene.page, GTK_TYPE_SPIN_BUTTON)), 4.0);
  click (&scene, "Make a pack");
  g_assert_cmpuint (get_packs (&scene)->len, ==, 2);
  g_assert_cmpint (bs_packs_compare (&g_array_index (get_packs (&scene), BsPack, 0), &outer), ==,
                   0);
  g_assert_nonnull (find_text (scene.page, "1 to 4: 4 laminations, some glued before"));
  g_assert_nonnull (find_text (scene.page, "2 to 3: 2 laminations"));
  desk_wait (is_done, scene.session);
  g_assert_nonnull (find_text (scene.page, "Press 1, round 1: 2 and 3"));
  g_assert_nonnull (find_text (scene.page, "Press 2, round 2: 1 to 4"));

  click (&scene, "Take apart"); /* the first: the larger one */
  g_assert_cmpuint (get_packs (&scene)->len, ==, 1);
  g_assert_cmpint (bs_packs_compare (&g_array_index (get_packs (&scene), BsPack, 0), &inner), ==,
                   0);
  desk_wait (is_done, scene.session);
  scene_close (&scene);
}

/* Without clamps nothing can be glued, and the place says what would help. */
static void
test_impossible (void)
{
  g_autoptr (BsPlan) plan = shop_new_hasty ();
  Scene scene;

  plan->adhesive.total_s = 60.0;
  scene = scene_new (plan);
  g_assert_nonnull (find_text (scene.page, "Any one of these would make it possible:"));
  g_assert_null (find_text (scene.page, "Fewest rounds, then least time"));
  scene_close (&scene);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/schedule-page/words", test_words);
  g_test_add_func ("/schedule-page/nothing-to-glue", test_nothing_to_glue);
  g_test_add_func ("/schedule-page/stale", test_stale);
  g_test_add_func ("/schedule-page/use-proposed", test_use_proposed);
  g_test_add_func ("/schedule-page/look-at-other", test_look_at_other);
  g_test_add_func ("/schedule-page/make-and-take-apart", test_make_and_take_apart);
  g_test_add_func ("/schedule-page/nest", test_nest);
  g_test_add_func ("/schedule-page/impossible", test_impossible);
  return g_test_run ();
}
