/** Test doubles, port contracts and recordings that several tests share. */
package org.boothlamp.testing;
