package org.boothlamp.page;

/**
 * Who asks. Immutable.
 *
 * @param role null if nobody has signed on
 * @param formToken what this visitor's forms must carry, see {@link Layout#form}
 * @param signedOn true if a token was asked for, so that there is something to sign off from
 */
public record Visitor(Role role, String formToken, boolean signedOn) {

  /** True if the role has this right; without a role only {@link Right#NONE}. */
  public boolean may(Right right) {
    return role == null ? right == Right.NONE : role.may(right);
  }
}
