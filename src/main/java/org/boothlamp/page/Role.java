package org.boothlamp.page;

import java.util.EnumSet;
import java.util.Set;

/** Who looks at the page. */
public enum Role {
  /** A screen or tablet in the booth. */
  TRAINEE("trainee", EnumSet.of(Right.NONE, Right.SEE, Right.ENTER)),
  /** The class as well. */
  INSTRUCTOR("instructor", EnumSet.allOf(Right.class)),
  /** The monitor itself, and no entries in anybody's name. */
  TECHNICIAN("technician", EnumSet.of(Right.NONE, Right.SEE, Right.STATE));

  private final String word;
  private final Set<Right> rights;

  Role(String word, Set<Right> rights) {
    this.word = word;
    this.rights = rights;
  }

  /** Word in cookies, and of the phrase page.role.WORD. */
  public String word() {
    return word;
  }

  /** True if the role has this right. */
  public boolean may(Right right) {
    return rights.contains(right);
  }

  /** The role with this word, or null. */
  static Role ofWord(String word) {
    for (Role role : values()) {
      if (role.word.equals(word)) {
        return role;
      }
    }
    return null;
  }
}
