import type { Multipart } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import { Refusal } from '../../platform/refusals/refusal.js';
import { invalidInput } from '../../platform/refusals/refusal-of.js';
import { wrongField } from '../contract/field-error.js';
import { TickBody } from './checklists.schemas.js';
import { readPhoto, type Photo } from './photo.js';

export const PHOTO_LIMIT_BYTES = 10 * 1_048_576;
/** A few kilobytes can claim to be a picture that fills a machine: more than any camera on a site makes is refused. */
const MOST_PIXELS = 120_000_000;

export interface TickPhoto extends Photo {
  readonly bytes: Buffer;
}

/** What is said with a tick. */
export interface TickInput extends TickBody {
  readonly photo?: TickPhoto;
}

/** The note of a JSON body, or note and photo of a form; nothing need be sent. */
export async function tickInput(request: FastifyRequest): Promise<TickInput> {
  return request.isMultipart() ? formInput(request) : checked(request.body);
}

function checked(body: unknown): TickBody {
  const read = TickBody.safeParse(body);
  if (!read.success) throw invalidInput(read.error.issues);
  return read.data;
}

async function formInput(request: FastifyRequest): Promise<TickInput> {
  const fields: Record<string, unknown> = {};
  let photo: TickPhoto | undefined;
  try {
    for await (const part of request.parts({ limits: { fileSize: PHOTO_LIMIT_BYTES, files: 1 } })) {
      if (part.type === 'file' && part.fieldname === 'photo') photo = photoOf(await part.toBuffer());
      else if (part.type === 'field' && part.fieldname === 'note') fields['note'] = part.value;
      else throw strangePart(part);
    }
  } catch (error) {
    request.raw.resume();
    if (error instanceof Refusal || (error instanceof Error && ('statusCode' in error || 'code' in error))) throw error;
    throw new Refusal('unreadable', 'The form breaks off or is damaged.');
  }
  return { ...checked(fields), ...(photo ? { photo } : {}) };
}

function photoOf(bytes: Buffer): TickPhoto {
  const photo = readPhoto(bytes);
  if (!photo) throw wrongField('The photo is not one.', '/photo', `${bytes.length} bytes`, 'a whole JPEG or PNG');
  if (photo.width * photo.height > MOST_PIXELS) {
    throw wrongField('The photo has too many pixels.', '/photo', `${photo.width} by ${photo.height}`, `at most ${MOST_PIXELS} pixels`);
  }
  return { ...photo, bytes };
}

const strangePart = ({ fieldname }: Multipart): Refusal =>
  wrongField('The form holds a part that is not read here.', `/${fieldname}`, fieldname, 'a field called note and one file called photo');
