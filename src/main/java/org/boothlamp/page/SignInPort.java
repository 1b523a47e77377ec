package org.boothlamp.page;

import java.util.List;
import org.boothlamp.procedure.Window;

/** Who signs trainees in for the page. Called from several threads at once. */
public interface SignInPort {

  /** What can be welded to, in the order to show. */
  List<Choice> choices();

  /**
   * Says who welds from now on; the monitor takes it up within a second.
   *
   * @param trainee a code of the form {@link SignInView#CODE}
   * @param procedureId one of {@link #choices}, as is the pass
   * @throws IllegalArgumentException if this cannot be judged; says why and what to do
   */
  void signIn(String trainee, String procedureId, String pass);

  /** Says that nobody welds here for now. */
  void signOut();

  /**
   * A pass of a procedure. Immutable.
   *
   * @param windows what it limits
   */
  record Choice(String procedureId, String revision, String pass, List<Window> windows) {

    public Choice {
      windows = List.copyOf(windows);
    }
  }
}
