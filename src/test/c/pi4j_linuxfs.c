/*
 * The native part of Pi4J's LinuxFile for any processor: the library brings it for ARM alone. A test puts
 * the folder with this, built as libpi4j-linuxfs.so, into the system property pi4j.library.path. Each
 * function is the plain system call; messages to the converter are read(2) and write(2) of Java itself.
 *
 * directIOCTLStructure is left out: combined transfers, which this program does not use. A call of it
 * ends in an UnsatisfiedLinkError.
 */
#include <errno.h>
#include <jni.h>
#include <string.h>
#include <sys/ioctl.h>

/* The Java machine makes calls of its own between two of ours. */
static _Thread_local int last_error;

JNIEXPORT jint JNICALL Java_com_pi4j_library_linuxfs_LinuxFile_getPosixFD(JNIEnv *java, jclass type,
                                                                          jobject descriptor)
{
    jclass descriptor_type = (*java)->GetObjectClass(java, descriptor);
    jfieldID number = (*java)->GetFieldID(java, descriptor_type, "fd", "I");

    (void) type;
    return number == NULL ? -1 : (*java)->GetIntField(java, descriptor, number);
}

JNIEXPORT jint JNICALL Java_com_pi4j_library_linuxfs_LinuxFile_directIOCTL(JNIEnv *java, jclass type,
                                                                           jint file, jlong request,
                                                                           jint value)
{
    int answer = ioctl(file, (unsigned long) request, (long) value);

    (void) java;
    (void) type;
    last_error = errno;
    return answer;
}

JNIEXPORT jint JNICALL Java_com_pi4j_library_linuxfs_LinuxFile_errno(JNIEnv *java, jclass type)
{
    (void) java;
    (void) type;
    return last_error;
}

JNIEXPORT jstring JNICALL Java_com_pi4j_library_linuxfs_LinuxFile_strerror(JNIEnv *java, jclass type,
                                                                           jint error)
{
    (void) type;
    return (*java)->NewStringUTF(java, strerror(error));
}
