/** Holds the numbers in hardware-notes against the parts they are made of. */
package org.boothlamp.hardwarenotes;
